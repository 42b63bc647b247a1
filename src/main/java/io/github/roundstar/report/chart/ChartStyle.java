package io.github.roundstar.report.chart;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Map;
import java.util.function.Function;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisLabelLocation;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.svg.SVGGraphics2D;

/**
 * The one house style: no border, no background, light horizontal rules only, words set level, the
 * name of the vertical axis above it, one font at one size.
 */
final class ChartStyle {
  static final BasicStroke HAIR = stroke(0.8f);
  static final BasicStroke LINE = stroke(1.6f);
  static final BasicStroke DASHED = stroke(1.6f, 6, 3);
  static final BasicStroke THIN_DASHED = stroke(1.1f, 3, 3);

  /** Space for the name of an axis above its plot [px]. */
  static final int HEADROOM = 26;

  private final Font font;

  private ChartStyle(Font font) {
    this.font = font;
  }

  static ChartStyle load() throws ChartsUnavailable {
    return new ChartStyle(ChartFont.load());
  }

  Font font() {
    return font;
  }

  static BasicStroke stroke(float width, float... dashes) {
    return new BasicStroke(
        width,
        dashes.length > 0 ? BasicStroke.CAP_BUTT : BasicStroke.CAP_ROUND,
        BasicStroke.JOIN_ROUND,
        10,
        dashes.length > 0 ? dashes : null,
        0);
  }

  /** Dresses a horizontal axis; its title stands at the right end below it. */
  ListedAxis horizontal(ListedAxis axis, String title) {
    dress(axis);
    axis.setTickMarkInsideLength(0);
    axis.setTickMarkOutsideLength(4);
    axis.setAxisLinePaint(Ink.QUIET.color());
    axis.setAxisLineStroke(HAIR);
    axis.setLabel(title);
    axis.setLabelLocation(AxisLabelLocation.HIGH_END);
    return axis;
  }

  /** Dresses a vertical axis: tick labels only. */
  ListedAxis vertical(ListedAxis axis) {
    dress(axis);
    axis.setAxisLineVisible(false);
    axis.setTickMarksVisible(false);
    return axis;
  }

  private void dress(ListedAxis axis) {
    axis.setLabelFont(font);
    axis.setLabelPaint(Ink.QUIET.color());
    axis.setTickLabelFont(font);
    axis.setTickLabelPaint(Ink.QUIET.color());
    axis.setTickMarkPaint(Ink.QUIET.color());
    axis.setTickMarkStroke(HAIR);
    axis.setMinorTickMarksVisible(false);
  }

  /** An empty plot; the horizontal axis is null for a lane of a combined plot. */
  XYPlot plot(ListedAxis horizontal, ListedAxis vertical) {
    XYPlot plot = new XYPlot(null, horizontal, vertical, null);
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    plot.setInsets(new RectangleInsets(HEADROOM, 2, 2, 14));
    return plot;
  }

  /** Light rules at the ticks of the vertical axis, as one element, and its name above it. */
  void rules(XYPlot plot, ListedAxis horizontal, ListedAxis vertical, String name, Ink ink) {
    Path2D rules = new Path2D.Double();
    for (Tick tick : vertical.ticks()) {
      if (vertical.getRange().contains(tick.value())) {
        rules.moveTo(horizontal.getLowerBound(), tick.value());
        rules.lineTo(horizontal.getUpperBound(), tick.value());
      }
    }
    plot.addAnnotation(DataPath.stroked(rules, Ink.RULE.color(), HAIR));
    double left = horizontal.isInverted() ? horizontal.getUpperBound() : horizontal.getLowerBound();
    plot.addAnnotation(
        DataLabels.beside(font)
            .add(
                left, vertical.getUpperBound(), 0, -9, DataLabels.Anchor.START, name, ink.color()));
  }

  /** Draws the plot and passes it through the SVG step. */
  Svg draw(Plot plot, Sheet sheet) {
    return draw(plot, sheet, drawn -> Map.of());
  }

  /**
   * The same with data for the page's script.
   *
   * @param data from where the plot was drawn to names and values of {@code data-} attributes
   */
  Svg draw(Plot plot, Sheet sheet, Function<PlotRenderingInfo, Map<String, String>> data) {
    plot.setNoDataMessage(null);
    JFreeChart chart = new JFreeChart(null, font, plot, false);
    chart.setBackgroundPaint(null);
    chart.setBorderVisible(false);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    SVGGraphics2D g2 = new SVGGraphics2D(sheet.width(), sheet.height());
    g2.setDefsKeyPrefix(sheet.id() + "-");
    g2.setGeomDoubleConverter(SvgStep::decimals);
    g2.setTransformDoubleConverter(SvgStep::decimals);
    ChartRenderingInfo drawn = new ChartRenderingInfo(null);
    chart.draw(g2, new Rectangle2D.Double(0, 0, sheet.width(), sheet.height()), drawn);
    return SvgStep.of(
        g2.getSVGElement(),
        sheet,
        g2.getFontMetrics(font)::stringWidth,
        data.apply(drawn.getPlotInfo()));
  }
}
