package io.github.roundstar.signal;

import java.util.Arrays;

/**
 * A line thinned for a chart: of each column of equal width the first, lowest, highest and last
 * point, in their order, so that the drawn line covers the same pixels as the whole one.
 */
public final class Decimation {
  private final double[] x;
  private final double[] y;

  private Decimation(double[] x, double[] y) {
    this.x = x;
    this.y = y;
  }

  /**
   * Thins a line.
   *
   * @param x positions, ascending, equal ones allowed
   * @param y as many values
   * @param columns number of columns, at least 1; at most four points are kept in each
   */
  public static Decimation of(double[] x, double[] y, int columns) {
    ColumnCut cut = new ColumnCut(x, y, columns);
    boolean[] kept = new boolean[x.length];
    int to;
    for (int from = 0; from < x.length; from = to) {
      to = cut.end(from);
      kept[from] = true;
      kept[to - 1] = true;
      kept[extreme(y, from, to, 1)] = true;
      kept[extreme(y, from, to, -1)] = true;
    }
    return of(x, y, kept);
  }

  private static Decimation of(double[] x, double[] y, boolean[] kept) {
    double[] thinX = new double[x.length];
    double[] thinY = new double[x.length];
    int size = 0;
    for (int i = 0; i < x.length; i++) {
      if (kept[i]) {
        thinX[size] = x[i];
        thinY[size++] = y[i];
      }
    }
    return new Decimation(Arrays.copyOf(thinX, size), Arrays.copyOf(thinY, size));
  }

  private static int extreme(double[] y, int from, int to, int sign) {
    int best = from;
    for (int i = from + 1; i < to; i++) {
      best = sign * y[i] > sign * y[best] ? i : best;
    }
    return best;
  }

  /** Number of points kept. */
  public int size() {
    return x.length;
  }

  /** Position of point {@code i}. */
  public double x(int i) {
    return x[i];
  }

  /** Value of point {@code i}. */
  public double y(int i) {
    return y[i];
  }
}
