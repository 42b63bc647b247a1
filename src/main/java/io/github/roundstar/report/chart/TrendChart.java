package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Sentences;
import io.github.roundstar.results.SeasonChange;
import io.github.roundstar.results.Trend;
import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.XYPlot;

/** One figure of every night along a season, with lines where the mount was worked on. */
public final class TrendChart {
  private static final int HEIGHT = 260;
  private static final BasicStroke DOT = ChartStyle.stroke(5);

  private TrendChart() {}

  /**
   * Draws it; empty without points.
   *
   * @param firstDate date of the season's first night
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(Trend trend, List<SeasonChange> changes, String firstDate)
      throws ChartsUnavailable {
    if (trend.points().isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    Extent x = new Extent().add(0);
    Extent y = new Extent().add(0);
    trend.points().forEach(point -> x.add(point.days()));
    trend.points().forEach(point -> y.add(point.value().lo95()).add(point.value().hi95()));
    changes.forEach(change -> x.add(change.days()));
    Extent wide = x.padded(0.03, 10);
    Extent high = y.padded(0.15, 0.01);
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(wide.low(), wide.high(), Ticks.linear(wide.low(), wide.high(), 10)),
            "days since " + firstDate);
    ListedAxis vertical =
        style.vertical(
            new ListedAxis(high.low(), high.high(), Ticks.linear(high.low(), high.high(), 4)));
    XYPlot plot = style.plot(horizontal, vertical);
    String unit = trend.unit().isEmpty() ? "without a unit" : trend.unit();
    style.rules(plot, horizontal, vertical, unit, Ink.INK);
    marks(plot, style, changes, high);
    plot.addAnnotation(DataPath.stroked(intervals(trend), Ink.RA.color(), ChartStyle.HAIR));
    plot.addAnnotation(DataPath.stroked(dots(trend), Ink.RA.color(), DOT));
    return Optional.of(
        style
            .draw(
                plot,
                new Sheet("trend-" + trend.key(), Sheet.WIDE, HEIGHT, title(trend), words(trend)))
            .with(table(trend)));
  }

  private static void marks(
      XYPlot plot, ChartStyle style, List<SeasonChange> changes, Extent high) {
    DataLabels labels = DataLabels.beside(style.font());
    Path2D lines = new Path2D.Double();
    for (int i = 0; i < changes.size(); i++) {
      double at = changes.get(i).days();
      lines.append(Paths.segment(at, high.low(), at, high.high()), false);
      labels.add(
          at, high.high(), 4, 12, DataLabels.Anchor.START, String.valueOf(i + 1), Ink.INK.color());
    }
    plot.addAnnotation(DataPath.stroked(lines, Ink.QUIET.color(), ChartStyle.THIN_DASHED));
    plot.addAnnotation(labels);
  }

  private static Path2D intervals(Trend trend) {
    Path2D path = new Path2D.Double();
    for (Trend.Point point : trend.points()) {
      path.append(
          Paths.segment(point.days(), point.value().lo95(), point.days(), point.value().hi95()),
          false);
    }
    return path;
  }

  private static Path2D dots(Trend trend) {
    List<double[]> at = new ArrayList<>();
    trend.points().forEach(point -> at.add(new double[] {point.days(), point.value().value()}));
    Path2D path = new Path2D.Double();
    at.forEach(point -> path.append(Paths.segment(point[0], point[1], point[0], point[1]), false));
    return path;
  }

  private static String words(Trend trend) {
    Extent extent = new Extent();
    trend.points().forEach(point -> extent.add(point.value().value()));
    return Numbers.counted(trend.points().size(), "night", "nights")
        + ", from "
        + Numbers.plain(extent.low())
        + " to "
        + Numbers.plain(extent.high())
        + " "
        + trend.unit()
        + ".";
  }

  private static String title(Trend trend) {
    return Sentences.capital(trend.name()) + ", night by night";
  }

  private static ChartTable table(Trend trend) {
    return ChartTable.rows(
        "Every night.",
        List.of("night", trend.unit().isEmpty() ? "value" : trend.unit()),
        trend.points().stream()
            .map(point -> List.of(point.night(), Numbers.both(point.value())))
            .toList());
  }
}
