package io.github.roundstar.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** The same small shape, sized in pixels, at many places: one element. */
@SuppressWarnings("serial")
final class DataMarks extends AbstractXYAnnotation {
  private static final BasicStroke OUTLINE =
      new BasicStroke(1.3f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);

  private final double[] x;
  private final double[] y;
  private final Path2D shape;
  private final Color color;
  private final boolean filled;

  /** The shape is in pixels about its centre, y downwards. */
  DataMarks(double[] x, double[] y, Path2D shape, Color color, boolean filled) {
    this.x = x.clone();
    this.y = y.clone();
    this.shape = shape;
    this.color = color;
    this.filled = filled;
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
    Path2D all = new Path2D.Double();
    for (int i = 0; i < x.length; i++) {
      double px = DataPath.place(x[i], domainAxis, dataArea, plot.getDomainAxisEdge());
      double py = DataPath.place(y[i], rangeAxis, dataArea, plot.getRangeAxisEdge());
      all.append(shape.getPathIterator(AffineTransform.getTranslateInstance(px, py)), false);
    }
    g2.setPaint(color);
    if (filled) {
      g2.fill(all);
    } else {
      g2.setStroke(OUTLINE);
      g2.draw(all);
    }
  }
}
