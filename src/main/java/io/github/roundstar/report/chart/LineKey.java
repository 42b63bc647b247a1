package io.github.roundstar.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** Names of curves with a sample of each, right of a plot whose curves end in one place. */
@SuppressWarnings("serial")
final class LineKey extends AbstractXYAnnotation {
  /** A null stroke stands for a filled band. */
  private record Entry(String text, Color ink, Color sample, BasicStroke stroke) {}

  private static final int LEFT = 12;
  private static final int SAMPLE = 22;
  private static final int ROW = 22;

  private final Font font;
  private final List<Entry> entries = new ArrayList<>();

  LineKey(Font font) {
    this.font = font;
  }

  LineKey line(String text, Ink ink, BasicStroke stroke) {
    entries.add(new Entry(text, ink.color(), ink.color(), stroke));
    return this;
  }

  LineKey band(String text, Ink ink, double opacity) {
    entries.add(new Entry(text, ink.color(), ink.color(opacity), null));
    return this;
  }

  @Override
  public void draw(
      Graphics2D g2,
      XYPlot plot,
      Rectangle2D dataArea,
      ValueAxis domainAxis,
      ValueAxis rangeAxis,
      int rendererIndex,
      PlotRenderingInfo info) {
    double left = dataArea.getMaxX() + LEFT;
    double middle = dataArea.getMinY() + ROW / 2.0;
    g2.setFont(font);
    for (Entry entry : entries) {
      g2.setPaint(entry.sample);
      if (entry.stroke == null) {
        g2.fill(new Rectangle2D.Double(left, middle - 5, SAMPLE, 10));
      } else {
        g2.setStroke(entry.stroke);
        g2.draw(new Line2D.Double(left, middle, left + SAMPLE, middle));
      }
      g2.setPaint(entry.ink);
      g2.drawString(entry.text, (float) (left + SAMPLE + 6), (float) (middle + 4.5));
      middle += ROW;
    }
  }
}
