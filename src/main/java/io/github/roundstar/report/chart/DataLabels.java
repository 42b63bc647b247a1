package io.github.roundstar.report.chart;

import io.github.roundstar.results.Polyline;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
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

  /** Letters of other fonts are by so much wider. */
  private static final double WIDER = 1.08;

  private static final int STEP = 3;
  private static final int MOST_STEPS = 30;

  /** A label farther above its place than this is tied to it [px]. */
  private static final int LEADER = 8;

  private final Font font;
  private final Polyline below;
  private final List<Label> labels = new ArrayList<>();

  private DataLabels(Font font, Polyline below) {
    this.font = font;
    this.below = below;
  }

  /** Labels that move up or down, whichever is nearer. */
  static DataLabels beside(Font font) {
    return new DataLabels(font, null);
  }

  /** Labels that only move up and stay clear of a curve, each tied to its place by a hair line. */
  static DataLabels above(Font font, Polyline curve) {
    return new DataLabels(font, curve);
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
      // A browser's letters may be wider than those measured here; what stands before its place
      // must not run over it.
      double room = label.anchor == Anchor.END ? WIDER * width : width;
      double left = px + label.dx - room * label.anchor.ordinal() / 2.0;
      if (label.anchor == Anchor.MIDDLE) {
        left = Math.max(dataArea.getMinX(), Math.min(left, dataArea.getMaxX() - width));
      }
      double top = py + label.dy - metrics.getAscent();
      if (below != null) {
        double curve = curveTop(left, left + width, plot, dataArea, domainAxis, rangeAxis);
        top = Math.min(top, curve - metrics.getHeight());
      }
      Rectangle2D box = free(new Rectangle2D.Double(left, top, width, metrics.getHeight()), taken);
      taken.add(box);
      if (below != null && label.anchor != Anchor.END && py - box.getMaxY() > LEADER) {
        g2.setPaint(Ink.QUIET.color());
        g2.setStroke(ChartStyle.HAIR);
        g2.draw(new Line2D.Double(px, box.getMaxY() - 2, px, py - 3));
      }
    }
    // Words come last, so that no leader of another label crosses them.
    for (int i = 0; i < labels.size(); i++) {
      Rectangle2D box = taken.get(i);
      g2.setPaint(labels.get(i).color);
      g2.drawString(
          labels.get(i).text, (float) box.getX(), (float) (box.getY() + metrics.getAscent()));
    }
  }

  /**
   * Highest place of the curve between two pixel columns; the bottom of the plot without points.
   */
  private double curveTop(
      double left,
      double right,
      XYPlot plot,
      Rectangle2D dataArea,
      ValueAxis domainAxis,
      ValueAxis rangeAxis) {
    double top = dataArea.getMaxY();
    for (int i = 1; i < below.size(); i++) {
      double x0 = DataPath.place(below.x(i - 1), domainAxis, dataArea, plot.getDomainAxisEdge());
      double x1 = DataPath.place(below.x(i), domainAxis, dataArea, plot.getDomainAxisEdge());
      double y0 = DataPath.place(below.y(i - 1), rangeAxis, dataArea, plot.getRangeAxisEdge());
      double y1 = DataPath.place(below.y(i), rangeAxis, dataArea, plot.getRangeAxisEdge());
      if (x1 >= left && x0 <= right && x1 > x0) {
        double slope = (y1 - y0) / (x1 - x0);
        top = Math.min(top, y0 + slope * (Math.max(left, x0) - x0));
        top = Math.min(top, y0 + slope * (Math.min(right, x1) - x0));
      }
    }
    return top;
  }

  private Rectangle2D free(Rectangle2D wanted, List<Rectangle2D> taken) {
    for (int i = 0; i <= MOST_STEPS; i++) {
      for (int sign : below != null ? new int[] {-1} : new int[] {-1, 1}) {
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
