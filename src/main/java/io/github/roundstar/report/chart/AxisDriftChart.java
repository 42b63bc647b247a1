package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.AxisTrace;
import io.github.roundstar.results.Polyline;
import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** Drift in declination against hour angle, run by run, with what the polar axis makes of it. */
public final class AxisDriftChart {
  private static final int HEIGHT = 380;
  private static final int RIGHT = 190;
  private static final BasicStroke RUN = ChartStyle.stroke(2.4f);
  private static final BasicStroke AXIS = ChartStyle.stroke(1.2f);

  private AxisDriftChart() {}

  /**
   * Draws it; empty without runs.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(AxisTrace trace) throws ChartsUnavailable {
    if (trace.runs().isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    Extent across = new Extent().addX(trace.axis());
    Extent up = new Extent().add(0).addY(trace.axis());
    for (AxisTrace.Run run : trace.runs()) {
      across.addX(run.line());
      up.addY(run.line()).addY(run.model()).add(run.drift().lo95()).add(run.drift().hi95());
    }
    Extent hours = across.padded(0.04, 0.5);
    Extent shown = up.padded(0.08, 0.2);
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(hours.low(), hours.high(), Ticks.linear(hours.low(), hours.high(), 8)),
            "hour angle, h (west positive)");
    ListedAxis vertical =
        style.vertical(
            new ListedAxis(shown.low(), shown.high(), Ticks.linear(shown.low(), shown.high(), 6)));
    XYPlot plot = style.plot(horizontal, vertical);
    plot.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 2, 2, RIGHT));
    style.rules(plot, horizontal, vertical, "Dec drift, arcsec/min (north up)", Ink.DEC);
    DataLabels labels = DataLabels.beside(style.font());
    plot.addAnnotation(DataPath.stroked(Paths.line(trace.axis()), Ink.INK.color(), AXIS));
    trace.runs().forEach(run -> run(plot, labels, run));
    plot.addAnnotation(labels);
    plot.addAnnotation(key(style, trace));
    return Optional.of(
        style
            .draw(
                plot,
                new Sheet("axis", Sheet.HALF, HEIGHT, "Dec drift against hour angle", words(trace)))
            .with(table(trace)));
  }

  private static void run(XYPlot plot, DataLabels labels, AxisTrace.Run run) {
    Polyline line = run.line();
    double middle = line.x(line.size() / 2);
    Path2D interval = Paths.segment(middle, run.drift().lo95(), middle, run.drift().hi95());
    plot.addAnnotation(DataPath.stroked(interval, Ink.DEC.color(), ChartStyle.LINE));
    plot.addAnnotation(DataPath.stroked(Paths.line(line), Ink.DEC.color(), RUN));
    plot.addAnnotation(
        DataPath.stroked(Paths.line(run.model()), Ink.INK.color(), ChartStyle.THIN_DASHED));
    labels.add(
        middle,
        run.drift().hi95(),
        0,
        -8,
        DataLabels.Anchor.MIDDLE,
        "run " + run.run(),
        Ink.DEC.color());
  }

  private static LineKey key(ChartStyle style, AxisTrace trace) {
    LineKey key = new LineKey(style.font()).line("run, with interval", Ink.DEC, RUN);
    return trace.axis().size() == 0
        ? key
        : key.line("polar axis", Ink.INK, AXIS)
            .line("axis and air", Ink.INK, ChartStyle.THIN_DASHED);
  }

  private static String words(AxisTrace trace) {
    StringBuilder text = new StringBuilder("Drift in declination, corrections taken out.");
    for (AxisTrace.Run run : trace.runs()) {
      text.append(
          " Run "
              + run.run()
              + " at hour angle "
              + Numbers.fixed(run.line().x(run.line().size() / 2), 1)
              + " h: "
              + Numbers.both(run.drift())
              + " arcsec/min.");
    }
    return text.append(
            trace.axis().size() == 0 ? "" : " The curve is what the polar axis found makes.")
        .toString();
  }

  private static ChartTable table(AxisTrace trace) {
    return ChartTable.rows(
        "Every run at its middle.",
        List.of("run", "hour angle, h", "Dec drift, arcsec/min"),
        trace.runs().stream()
            .map(
                run ->
                    List.of(
                        String.valueOf(run.run()),
                        Numbers.fixed(run.line().x(run.line().size() / 2), 1),
                        Numbers.both(run.drift())))
            .toList());
  }
}
