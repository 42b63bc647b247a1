package io.github.roundstar.report.chart;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.CompareEvidence;
import io.github.roundstar.results.CompareEvidence.RunDrift;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** Drift of the runs before and after against the hour angle of the star. */
public final class HourAngleChart {
  private static final int HEIGHT = 320;
  private static final int RIGHT = 110;

  /** Half width of a mark [h]. */
  private static final double MARK = 0.03;

  private HourAngleChart() {}

  /**
   * Drift in right ascension at the axis; empty when no run has it.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> ra(CompareEvidence evidence) throws ChartsUnavailable {
    return draw(
        evidence.drifts(),
        RunDrift::raAxis,
        "drift-ra",
        "RA drift at the axis, arcsec/min (east up)");
  }

  /**
   * Drift in declination; empty when no run has it.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> dec(CompareEvidence evidence) throws ChartsUnavailable {
    return draw(evidence.drifts(), RunDrift::dec, "drift-dec", "Dec drift, arcsec/min (north up)");
  }

  private static Optional<Svg> draw(
      List<RunDrift> drifts, Function<RunDrift, Estimate> of, String id, String name)
      throws ChartsUnavailable {
    List<RunDrift> known = drifts.stream().filter(drift -> of.apply(drift) != null).toList();
    if (known.isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    Extent x = new Extent();
    Extent y = new Extent().add(0);
    known.forEach(drift -> x.add(drift.hourAngleHours()));
    known.forEach(drift -> y.add(of.apply(drift).lo95()).add(of.apply(drift).hi95()));
    Extent wide = x.padded(0.08, 2);
    Extent high = y.padded(0.08, 0.2);
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(wide.low(), wide.high(), Ticks.linear(wide.low(), wide.high(), 8)),
            "hour angle, h (west of the meridian is positive)");
    ListedAxis vertical =
        style.vertical(
            new ListedAxis(high.low(), high.high(), Ticks.linear(high.low(), high.high(), 5)));
    XYPlot plot = style.plot(horizontal, vertical);
    plot.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 2, 2, RIGHT));
    style.rules(plot, horizontal, vertical, name, Ink.INK);
    plot.addAnnotation(
        DataPath.stroked(marks(known, of, false), Ink.QUIET.color(), ChartStyle.DASHED));
    plot.addAnnotation(DataPath.stroked(marks(known, of, true), Ink.RA.color(), ChartStyle.LINE));
    plot.addAnnotation(
        new LineKey(style.font())
            .line("before", Ink.QUIET, ChartStyle.DASHED)
            .line("after", Ink.RA, ChartStyle.LINE));
    return Optional.of(
        style
            .draw(
                plot,
                new Sheet(
                    id,
                    Sheet.HALF,
                    HEIGHT,
                    name.substring(0, name.indexOf(' ')) + " drift against hour angle",
                    words(known, of)))
            .with(table(known, of)));
  }

  /** An interval per run as a stroke with a cross bar at its value. */
  private static Path2D marks(
      List<RunDrift> drifts, Function<RunDrift, Estimate> of, boolean after) {
    Path2D path = new Path2D.Double();
    for (RunDrift drift : drifts) {
      if (drift.after() == after) {
        double at = drift.hourAngleHours();
        Estimate value = of.apply(drift);
        path.append(Paths.segment(at, value.lo95(), at, value.hi95()), false);
        path.append(Paths.segment(at - MARK, value.value(), at + MARK, value.value()), false);
      }
    }
    return path;
  }

  private static String words(List<RunDrift> drifts, Function<RunDrift, Estimate> of) {
    StringBuilder text = new StringBuilder("Drift of each run at its hour angle.");
    for (RunDrift drift : drifts.subList(0, Math.min(12, drifts.size()))) {
      text.append(drift.after() ? " After, " : " Before, ")
          .append(Numbers.fixed(drift.hourAngleHours(), 1))
          .append(" h: ")
          .append(Numbers.both(of.apply(drift)))
          .append(" arcsec per minute.");
    }
    return text.toString();
  }

  private static ChartTable table(List<RunDrift> drifts, Function<RunDrift, Estimate> of) {
    return ChartTable.rows(
        "Every run.",
        List.of("nights", "hour angle, h", "drift, arcsec/min"),
        drifts.stream()
            .map(
                drift ->
                    List.of(
                        drift.after() ? "after" : "before",
                        Numbers.fixed(drift.hourAngleHours(), 1),
                        Numbers.both(of.apply(drift))))
            .toList());
  }
}
