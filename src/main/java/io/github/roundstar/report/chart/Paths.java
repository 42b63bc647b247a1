package io.github.roundstar.report.chart;

import io.github.roundstar.results.Band;
import io.github.roundstar.results.Polyline;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;

/** Series as paths in data coordinates. NaN ends a stroke, so that a gap stays open. */
final class Paths {
  private static final int ELLIPSE_CORNERS = 72;

  private Paths() {}

  static Path2D line(Polyline points) {
    Path2D path = new Path2D.Double();
    boolean open = false;
    for (int i = 0; i < points.size(); i++) {
      open = extend(path, open, points.x(i), points.y(i));
    }
    return path;
  }

  static Path2D middle(Band band) {
    Path2D path = new Path2D.Double();
    boolean open = false;
    for (int i = 0; i < band.size(); i++) {
      open = extend(path, open, band.x(i), band.middle(i));
    }
    return path;
  }

  /** One closed outline per unbroken stretch. */
  static Path2D outline(Band band) {
    Path2D path = new Path2D.Double();
    int from = 0;
    while (from < band.size()) {
      int to = from;
      while (to < band.size() && Double.isFinite(band.low(to)) && Double.isFinite(band.high(to))) {
        to++;
      }
      if (to > from) {
        outline(path, band, from, to);
      }
      from = to + 1;
    }
    return path;
  }

  /** The area under a line, down to a level. */
  static Path2D below(Polyline line, double level) {
    double[] x = new double[line.size()];
    double[] low = new double[line.size()];
    double[] high = new double[line.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = line.x(i);
      low[i] = level;
      high[i] = line.y(i);
    }
    return outline(Band.of(x, low, high, high));
  }

  private static void outline(Path2D path, Band band, int from, int to) {
    path.moveTo(band.x(from), band.high(from));
    for (int i = from + 1; i < to; i++) {
      path.lineTo(band.x(i), band.high(i));
    }
    for (int i = to - 1; i >= from; i--) {
      path.lineTo(band.x(i), band.low(i));
    }
    path.closePath();
  }

  /** A stroke of no length per point: round caps make it a dot. */
  static Path2D dots(Polyline points) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < points.size(); i++) {
      if (Double.isFinite(points.x(i)) && Double.isFinite(points.y(i))) {
        path.moveTo(points.x(i), points.y(i));
        path.lineTo(points.x(i), points.y(i));
      }
    }
    return path;
  }

  static Path2D segment(double x0, double y0, double x1, double y1) {
    Path2D path = new Path2D.Double();
    path.moveTo(x0, y0);
    path.lineTo(x1, y1);
    return path;
  }

  static Path2D box(double x0, double y0, double x1, double y1) {
    Path2D path = segment(x0, y0, x1, y0);
    path.lineTo(x1, y1);
    path.lineTo(x0, y1);
    path.closePath();
    return path;
  }

  /** Half axes in data units, position angle of the major one from +y (north) towards +x (east). */
  static Path2D ellipse(double major, double minor, double angleDeg) {
    double east = Math.sin(Math.toRadians(angleDeg));
    double north = Math.cos(Math.toRadians(angleDeg));
    Path2D path = new Path2D.Double();
    for (int i = 0; i < ELLIPSE_CORNERS; i++) {
      double turn = 2 * Math.PI * i / ELLIPSE_CORNERS;
      double along = major * Math.cos(turn);
      double across = minor * Math.sin(turn);
      extend(path, i > 0, along * east + across * north, along * north - across * east);
    }
    path.closePath();
    return path;
  }

  /** The corner of a shape that lies farthest in a direction, as x and y. */
  static double[] farthest(Path2D shape, double x, double y) {
    double[] best = {0, 0};
    double most = Double.NEGATIVE_INFINITY;
    double[] at = new double[6];
    for (PathIterator i = shape.getPathIterator(null); !i.isDone(); i.next()) {
      if (i.currentSegment(at) != PathIterator.SEG_CLOSE && at[0] * x + at[1] * y > most) {
        most = at[0] * x + at[1] * y;
        best = new double[] {at[0], at[1]};
      }
    }
    return best;
  }

  private static boolean extend(Path2D path, boolean open, double x, double y) {
    if (!Double.isFinite(x) || !Double.isFinite(y)) {
      return false;
    }
    if (open) {
      path.lineTo(x, y);
    } else {
      path.moveTo(x, y);
    }
    return true;
  }
}
