package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.CompareEvidence;
import io.github.roundstar.results.CompareEvidence.Sides;
import io.github.roundstar.results.Polyline;
import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** Curves of the nights before and after on one pair of axes. */
public final class OverlayChart {
  private static final int HEIGHT = 380;
  private static final int RIGHT = 110;
  private static final BasicStroke BEFORE = ChartStyle.DASHED;
  private static final BasicStroke AFTER = ChartStyle.LINE;

  /** Smaller amplitudes are drawn at the lower edge [arcsec]. */
  private static final double LEAST = 0.01;

  private OverlayChart() {}

  /**
   * Amplitude against period; empty unless both sides have a spectrum.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> spectra(CompareEvidence evidence) throws ChartsUnavailable {
    if (evidence.spectra().lacksOne()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    Sides sides = mapped(evidence.spectra());
    Extent x = new Extent();
    Extent y = new Extent();
    all(sides).forEach(line -> x.addX(line));
    all(sides).forEach(line -> y.addY(line));
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(
                x.low(),
                x.high() + 1e-3,
                Ticks.periods(Math.pow(10, x.low()), Math.pow(10, x.high()), Sheet.HALF - RIGHT)),
            "period");
    double low = Math.min(Math.max(y.low(), y.high() - 3), y.high() - 1);
    ListedAxis vertical =
        style.vertical(
            new ListedAxis(low, y.high() + 0.1, Ticks.decades(low, y.high() + 0.1, HEIGHT - 70)));
    Sheet sheet =
        new Sheet(
            "spectra",
            Sheet.HALF,
            HEIGHT,
            "Amplitude against period before and after",
            "Spectra of the mount's motion in right ascension, logarithmic. Largest amplitude "
                + peak(sides.before(), true)
                + " arcsec before and "
                + peak(sides.after(), true)
                + " after.");
    return Optional.of(
        draw(style, horizontal, vertical, sides, SpectrumChart.name(y.low() <= low), sheet)
            .with(
                table(
                    "period",
                    logarithm -> Times.shortPeriod(Math.pow(10, logarithm)),
                    logarithm -> Numbers.plain(Math.pow(10, logarithm)),
                    sides)));
  }

  /**
   * One turn of the gear on one phase; empty unless both sides show it.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> turns(CompareEvidence evidence) throws ChartsUnavailable {
    if (evidence.turns().lacksOne()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    Sides sides = evidence.turns();
    List<Tick> ticks =
        Ticks.spans(evidence.turnSeconds()).stream()
            .map(tick -> new Tick(tick.value() / evidence.turnSeconds(), tick.label()))
            .toList();
    ListedAxis horizontal = style.horizontal(new ListedAxis(0, 1, ticks), "time within the turn");
    Extent y = new Extent();
    all(sides).forEach(line -> y.addY(line));
    Sheet sheet =
        new Sheet(
            "turns",
            Sheet.HALF,
            HEIGHT,
            "One turn before and after, on one phase",
            "Right ascension over one turn of "
                + Times.period(evidence.turnSeconds())
                + ". Largest value "
                + peak(sides.before(), false)
                + " arcsec before and "
                + peak(sides.after(), false)
                + " after.");
    return Optional.of(
        draw(style, horizontal, linear(style, y), sides, "RA at the axis, arcsec (east up)", sheet)
            .with(
                table(
                    "time within the turn",
                    share -> Times.shortPeriod(share * evidence.turnSeconds()),
                    Numbers::plain,
                    sides)));
  }

  /**
   * Share of frames within a distance; empty unless both sides have frames.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> distances(CompareEvidence evidence) throws ChartsUnavailable {
    if (evidence.distances().lacksOne()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    Sides sides = evidence.distances();
    // The last percent of the frames would squeeze the rest.
    double reach =
        all(sides).mapToDouble(line -> line.x(Math.max(0, line.size() - 2))).max().orElse(1);
    boolean beyond = all(sides).anyMatch(line -> line.x(line.size() - 1) > reach);
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(0, Math.max(reach, 0.1), Ticks.linear(0, Math.max(reach, 0.1), 8)),
            "distance from the mean place, arcsec"
                + (beyond ? "; the last 1 % goes on beyond the edge" : ""));
    List<Tick> shares =
        Stream.of(0.0, 0.25, 0.5, 0.75, 1.0)
            .map(share -> new Tick(share, Numbers.fixed(100 * share, 0)))
            .toList();
    ListedAxis vertical = style.vertical(new ListedAxis(0, 1.02, shares));
    Sheet sheet =
        new Sheet(
            "distances",
            Sheet.HALF,
            HEIGHT,
            "Share of frames within a distance, before and after",
            "Half of the frames lie within "
                + median(sides.before())
                + " arcsec before and "
                + median(sides.after())
                + " arcsec after.");
    return Optional.of(
        draw(style, horizontal, vertical, sides, "frames within that distance, %", sheet)
            .with(
                table(
                    "distance, arcsec",
                    Numbers::plain,
                    share -> Numbers.fixed(100 * share, 0),
                    sides)));
  }

  private static Svg draw(
      ChartStyle style,
      ListedAxis horizontal,
      ListedAxis vertical,
      Sides sides,
      String name,
      Sheet sheet) {
    XYPlot plot = style.plot(horizontal, vertical);
    plot.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 2, 2, RIGHT));
    style.rules(plot, horizontal, vertical, name, Ink.INK);
    plot.addAnnotation(DataPath.stroked(paths(sides.before()), Ink.QUIET.color(), BEFORE));
    plot.addAnnotation(DataPath.stroked(paths(sides.after()), Ink.RA.color(), AFTER));
    plot.addAnnotation(
        new LineKey(style.font()).line("before", Ink.QUIET, BEFORE).line("after", Ink.RA, AFTER));
    return style.draw(plot, sheet);
  }

  private static ListedAxis linear(ChartStyle style, Extent extent) {
    Extent shown = extent.padded(0.06, 0.5);
    return style.vertical(
        new ListedAxis(shown.low(), shown.high(), Ticks.linear(shown.low(), shown.high(), 6)));
  }

  private static Path2D paths(List<Polyline> lines) {
    Path2D path = new Path2D.Double();
    lines.forEach(line -> path.append(Paths.line(line), false));
    return path;
  }

  private static Stream<Polyline> all(Sides sides) {
    return Stream.concat(sides.before().stream(), sides.after().stream());
  }

  private static String peak(List<Polyline> lines, boolean logarithmic) {
    Extent extent = new Extent();
    lines.forEach(line -> extent.addY(line));
    return Numbers.plain(logarithmic ? Math.pow(10, extent.high()) : extent.high());
  }

  private static String median(List<Polyline> lines) {
    return Numbers.plain(
        lines.stream().mapToDouble(line -> line.x(line.size() / 2)).average().orElse(0));
  }

  private static Sides mapped(Sides sides) {
    return new Sides(logarithmic(sides.before()), logarithmic(sides.after()));
  }

  private static List<Polyline> logarithmic(List<Polyline> lines) {
    List<Polyline> result = new ArrayList<>();
    for (Polyline line : lines) {
      double[] x = new double[line.size()];
      double[] y = new double[line.size()];
      for (int i = 0; i < x.length; i++) {
        x[i] = Math.log10(line.x(i));
        y[i] = Math.log10(Math.max(line.y(i), LEAST));
      }
      result.add(Polyline.of(x, y));
    }
    return result;
  }

  private static ChartTable table(
      String across, DoubleFunction<String> x, DoubleFunction<String> y, Sides sides) {
    ChartTable.Spans spans = new ChartTable.Spans(across, x, y);
    sides.before().forEach(line -> spans.line("before", line));
    sides.after().forEach(line -> spans.line("after", line));
    return spans.table();
  }
}
