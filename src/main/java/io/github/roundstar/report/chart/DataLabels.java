package io.github.roundstar.report.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/**
 * Words beside data. A label that would cover one placed before is moved up or down to the nearest
 * free place; labels given first keep theirs.
 */
@SuppressWarnings("serial")
final class DataLabels extends AbstractXYAnnotation {
  /** Which part of the label sits at its place. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  private record Label(
      double x, double y, int dx, int dy, Anchor anchor, String text, Color color) {}

  private static final int STEP = 3;
  private static final int MOST_STEPS = 30;

  private final Font font;
  private final boolean upOnly;
  private final List<Label> labels = new ArrayList<>();

  private DataLabels(Font font, boolean upOnly) {
    this.font = font;
    this.upOnly = upOnly;
  }

  /** Labels that move up or down, whichever is nearer. */
  static DataLabels beside(Font font) {
    return new DataLabels(font, false);
  }

  /** Labels that only move up, as over the peaks of a curve. */
  static DataLabels above(Font font) {
    return new DataLabels(font, true);
  }

  /** A label at data coordinates, shifted by pixels (right and down positive). */
  DataLabels add(double x, double y, int dx, int dy, Anchor anchor, String text, Color color) {
    labels.add(new Label(x, y, dx, dy, anchor, text, color));
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
    g2.setFont(font);
    FontMetrics metrics = g2.getFontMetrics(font);
    List<Rectangle2D> taken = new ArrayList<>();
    for (Label label : labels) {
      double px = DataPath.place(label.x, domainAxis, dataArea, plot.getDomainAxisEdge());
      double py = DataPath.place(label.y, rangeAxis, dataArea, plot.getRangeAxisEdge());
      int width = metrics.stringWidth(label.text);
      double left = px + label.dx - width * label.anchor.ordinal() / 2.0;
      if (label.anchor == Anchor.MIDDLE) {
        left = Math.max(dataArea.getMinX(), Math.min(left, dataArea.getMaxX() - width));
      }
      Rectangle2D box =
          free(
              new Rectangle2D.Double(
                  left, py + label.dy - metrics.getAscent(), width, metrics.getHeight()),
              taken);
      taken.add(box);
      g2.setPaint(label.color);
      g2.drawString(label.text, (float) left, (float) (box.getY() + metrics.getAscent()));
    }
  }

  private Rectangle2D free(Rectangle2D wanted, List<Rectangle2D> taken) {
    for (int i = 0; i <= MOST_STEPS; i++) {
      for (int sign : upOnly ? new int[] {-1} : new int[] {-1, 1}) {
        Rectangle2D box =
            new Rectangle2D.Double(
                wanted.getX(),
                wanted.getY() + sign * i * STEP,
                wanted.getWidth(),
                wanted.getHeight());
        if (taken.stream().noneMatch(box::intersects)) {
          return box;
        }
      }
    }
    return wanted;
  }
}
