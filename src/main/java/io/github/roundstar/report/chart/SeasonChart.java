package io.github.roundstar.report.chart;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.SeasonChange;
import io.github.roundstar.results.Trend;
import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/**
 * All figures of a season, one above the other on one axis of dates: nights as dots with intervals,
 * the usual band, work on the mount as named lines.
 */
public final class SeasonChart {
  private static final int LANE_HEIGHT = 58;
  private static final int GAP = 34;
  private static final int BELOW = 42;
  private static final int ABOVE = 46;
  private static final int TICKS = 9;
  private static final int MOST_TICKS = 8;
  private static final BasicStroke DOT = ChartStyle.stroke(5);
  private static final BasicStroke LAST = ChartStyle.stroke(9);

  private SeasonChart() {}

  /**
   * Draws it; empty without a figure.
   *
   * @param id of the chart on its page
   * @param trends figures of one telescope
   * @param first date of the season's first night, from which days count
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(
      String id, List<Trend> trends, List<SeasonChange> changes, LocalDate first)
      throws ChartsUnavailable {
    if (trends.isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    Extent x = new Extent();
    trends.forEach(trend -> trend.points().forEach(point -> x.add(point.days())));
    changes.forEach(change -> x.add(change.days()));
    Extent wide = x.padded(0.03, 2);
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(
                wide.low(), wide.high(), Ticks.dates(first, wide.low(), wide.high(), TICKS)),
            "evening of the night");
    CombinedDomainXYPlot all = new CombinedDomainXYPlot(horizontal);
    all.setGap(GAP);
    all.setInsets(new RectangleInsets(ABOVE, 2, 2, 14));
    for (Trend trend : trends) {
      all.add(lane(style, horizontal, trend, changes, trend == trends.get(0)), LANE_HEIGHT);
    }
    int height = ABOVE + trends.size() * (LANE_HEIGHT + GAP) - GAP + BELOW;
    return Optional.of(
        style
            .draw(
                all,
                new Sheet(
                    id,
                    Sheet.WIDE,
                    height,
                    "Every figure, night by night: dots with intervals, the usual band behind",
                    words(trends, changes)))
            .with(table(trends)));
  }

  private static XYPlot lane(
      ChartStyle style,
      ListedAxis horizontal,
      Trend trend,
      List<SeasonChange> changes,
      boolean named) {
    Extent y = new Extent();
    trend.points().forEach(point -> y.add(point.value().lo95()).add(point.value().hi95()));
    Extent high = y.padded(0.1, 0.01);
    ListedAxis vertical = style.vertical(new ListedAxis(high.low(), high.high(), ticks(high)));
    XYPlot plot = style.plot(null, vertical);
    if (trend.usual() != null) {
      Path2D band = new Path2D.Double();
      band.moveTo(horizontal.getLowerBound(), trend.usual().lo95());
      band.lineTo(horizontal.getUpperBound(), trend.usual().lo95());
      band.lineTo(horizontal.getUpperBound(), trend.usual().hi95());
      band.lineTo(horizontal.getLowerBound(), trend.usual().hi95());
      band.closePath();
      plot.addAnnotation(DataPath.filled(band, Ink.RULE.color(0.6)));
    }
    String unit = trend.unit().isEmpty() ? "" : ", " + trend.unit();
    style.rules(plot, horizontal, vertical, Sentences.capital(trend.name()) + unit, Ink.INK);
    marks(plot, style, changes, high, named);
    List<Trend.Point> points = trend.points();
    Path2D intervals = new Path2D.Double();
    Path2D dots = new Path2D.Double();
    for (Trend.Point point : points) {
      intervals.append(
          Paths.segment(point.days(), point.value().lo95(), point.days(), point.value().hi95()),
          false);
      dots.append(dot(point), false);
    }
    plot.addAnnotation(DataPath.stroked(intervals, Ink.RA.color(), ChartStyle.HAIR));
    plot.addAnnotation(DataPath.stroked(dots, Ink.RA.color(), DOT));
    plot.addAnnotation(DataPath.stroked(dot(points.get(points.size() - 1)), Ink.RA.color(), LAST));
    return plot;
  }

  /** Two ticks at least, without which a lane has no scale. */
  private static List<Tick> ticks(Extent shown) {
    int wanted = 3;
    List<Tick> ticks = Ticks.linear(shown.low(), shown.high(), wanted);
    while (ticks.size() < 2 && wanted < MOST_TICKS) {
      ticks = Ticks.linear(shown.low(), shown.high(), ++wanted);
    }
    return ticks;
  }

  private static Path2D dot(Trend.Point point) {
    double value = point.value().value();
    return new Path2D.Double(Paths.segment(point.days(), value, point.days(), value));
  }

  private static void marks(
      XYPlot plot, ChartStyle style, List<SeasonChange> changes, Extent high, boolean named) {
    DataLabels labels = DataLabels.beside(style.font());
    Path2D lines = new Path2D.Double();
    for (SeasonChange change : changes) {
      lines.append(Paths.segment(change.days(), high.low(), change.days(), high.high()), false);
      if (named) {
        String name = change.what().isEmpty() ? change.date() : change.what();
        labels.add(
            change.days(), high.high(), 0, -27, DataLabels.Anchor.MIDDLE, name, Ink.INK.color());
      }
    }
    plot.addAnnotation(DataPath.stroked(lines, Ink.INK.color(), ChartStyle.THIN_DASHED));
    plot.addAnnotation(labels);
  }

  private static String words(List<Trend> trends, List<SeasonChange> changes) {
    StringBuilder words = new StringBuilder();
    for (Trend trend : trends) {
      Extent extent = new Extent();
      trend.points().forEach(point -> extent.add(point.value().value()));
      words
          .append(Sentences.capital(trend.name()))
          .append(" from ")
          .append(Numbers.plain(extent.low()))
          .append(" to ")
          .append(Numbers.plain(extent.high()))
          .append(trend.unit().isEmpty() ? "" : " " + trend.unit())
          .append(" over ")
          .append(Numbers.counted(trend.points().size(), "night", "nights"))
          .append(". ");
    }
    changes.forEach(c -> words.append("Line at ").append(c.date() + ": " + c.what() + ". "));
    return words.toString().strip();
  }

  private static ChartTable table(List<Trend> trends) {
    List<List<String>> rows = new ArrayList<>();
    for (Trend trend : trends) {
      for (Trend.Point point : trend.points()) {
        rows.add(List.of(trend.name(), trend.unit(), point.night(), Numbers.both(point.value())));
      }
    }
    return ChartTable.rows(
        "Every figure of every night.", List.of("figure", "unit", "night", "value"), rows);
  }
}
