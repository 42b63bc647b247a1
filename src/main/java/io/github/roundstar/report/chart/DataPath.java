package io.github.roundstar.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;

/**
 * A path of straight pieces in data coordinates, drawn as one element. What lies beyond an axis is
 * drawn at its end, so no clipping is needed.
 */
@SuppressWarnings("serial")
final class DataPath extends AbstractXYAnnotation {
  private final Path2D path;
  private final Color color;
  private final BasicStroke stroke;

  private DataPath(Path2D path, Color color, BasicStroke stroke) {
    this.path = path;
    this.color = color;
    this.stroke = stroke;
  }

  static DataPath filled(Path2D path, Color color) {
    return new DataPath(path, color, null);
  }

  static DataPath stroked(Path2D path, Color color, BasicStroke stroke) {
    return new DataPath(path, color, stroke);
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
    Path2D onPage = new Path2D.Double();
    double[] at = new double[6];
    for (PathIterator i = path.getPathIterator(null); !i.isDone(); i.next()) {
      int kind = i.currentSegment(at);
      double x = place(at[0], domainAxis, dataArea, plot.getDomainAxisEdge());
      double y = place(at[1], rangeAxis, dataArea, plot.getRangeAxisEdge());
      switch (kind) {
        case PathIterator.SEG_MOVETO -> onPage.moveTo(x, y);
        case PathIterator.SEG_LINETO -> onPage.lineTo(x, y);
        default -> onPage.closePath();
      }
    }
    if (onPage.getCurrentPoint() == null) {
      return;
    }
    g2.setPaint(color);
    if (stroke == null) {
      g2.fill(onPage);
    } else {
      g2.setStroke(stroke);
      g2.draw(onPage);
    }
  }

  static double place(double value, ValueAxis axis, Rectangle2D area, RectangleEdge edge) {
    double inside = Math.max(axis.getLowerBound(), Math.min(axis.getUpperBound(), value));
    return axis.valueToJava2D(inside, area, edge);
  }
}
