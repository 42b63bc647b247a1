package io.github.roundstar.report.chart;

import java.awt.geom.Path2D;

/** Shapes of marks, in pixels about their centre, y downwards; each tells a kind without colour. */
final class MarkShapes {
  private MarkShapes() {}

  static Path2D triangle() {
    return polygon(-4.5, 4, 4.5, 4, 0, -4.5);
  }

  static Path2D diamond() {
    return polygon(-5, 0, 0, -6.5, 5, 0, 0, 6.5);
  }

  static Path2D cross() {
    Path2D path = Paths.segment(-4, -4, 4, 4);
    path.append(Paths.segment(-4, 4, 4, -4), false);
    return path;
  }

  static Path2D zigzag() {
    Path2D path = Paths.segment(-2.5, -6, 2.5, -1.5);
    path.lineTo(-2.5, 1.5);
    path.lineTo(2.5, 6);
    return path;
  }

  static Path2D flag() {
    Path2D path = Paths.segment(0, 6, 0, -6);
    path.lineTo(6, -3);
    path.lineTo(0, 0);
    return path;
  }

  static Path2D square() {
    return polygon(-4, -4, 4, -4, 4, 4, -4, 4);
  }

  private static Path2D polygon(double... xy) {
    Path2D path = new Path2D.Double();
    path.moveTo(xy[0], xy[1]);
    for (int i = 2; i < xy.length; i += 2) {
      path.lineTo(xy[i], xy[i + 1]);
    }
    path.closePath();
    return path;
  }
}
