package io.github.roundstar.results;

/**
 * Points to be joined or dotted; immutable. A point whose ordinate is NaN is a gap: what lies on
 * either side is not joined.
 */
public final class Polyline {
  /** No points. */
  public static final Polyline EMPTY = new Polyline(new double[0], new double[0]);

  private final double[] x;
  private final double[] y;

  private Polyline(double[] x, double[] y) {
    this.x = x;
    this.y = y;
  }

  /**
   * Copies the points.
   *
   * @throws IllegalArgumentException if there are not as many x as y
   */
  public static Polyline of(double[] x, double[] y) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(x.length + " x but " + y.length + " y");
    }
    return new Polyline(x.clone(), y.clone());
  }

  /** Number of points. */
  public int size() {
    return x.length;
  }

  /** Abscissa of point {@code i}. */
  public double x(int i) {
    return x[i];
  }

  /** Ordinate of point {@code i}; NaN breaks the line. */
  public double y(int i) {
    return y[i];
  }
}
