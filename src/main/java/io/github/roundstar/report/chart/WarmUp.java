package io.github.roundstar.report.chart;

import java.util.List;
import org.jfree.chart.plot.XYPlot;

/** Loads the font and the classes that every chart needs, while other work goes on. */
public final class WarmUp {
  private WarmUp() {}

  /**
   * Draws a small chart and throws it away.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static void run() throws ChartsUnavailable {
    ChartStyle style = ChartStyle.load();
    List<Tick> ticks = Ticks.linear(0, 1, 2);
    ListedAxis horizontal = style.horizontal(new ListedAxis(0, 1, ticks), "x");
    ListedAxis vertical = style.vertical(new ListedAxis(0, 1, ticks));
    XYPlot plot = style.plot(horizontal, vertical);
    style.rules(plot, horizontal, vertical, "y", Ink.RA);
    plot.addAnnotation(
        DataPath.stroked(Paths.segment(0, 0, 1, 1), Ink.RA.color(), ChartStyle.LINE));
    style.draw(plot, new Sheet("warm-up", 200, 100, "", ""));
  }
}
