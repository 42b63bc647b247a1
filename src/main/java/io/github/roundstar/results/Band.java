package io.github.roundstar.results;

import java.util.Arrays;

/**
 * A curve with a lower and an upper edge; immutable. A column whose edges and curve are NaN is a
 * gap: what lies on either side is not joined.
 */
public final class Band {
  private final double[] x;
  private final double[] low;
  private final double[] middle;
  private final double[] high;

  private Band(double[] x, double[] low, double[] middle, double[] high) {
    this.x = x;
    this.low = low;
    this.middle = middle;
    this.high = high;
  }

  /**
   * Copies the columns.
   *
   * @throws IllegalArgumentException if they are not equally long
   */
  public static Band of(double[] x, double[] low, double[] middle, double[] high) {
    if (x.length != low.length || x.length != middle.length || x.length != high.length) {
      throw new IllegalArgumentException("columns of a band differ in length");
    }
    return new Band(x.clone(), low.clone(), middle.clone(), high.clone());
  }

  /**
   * The same in fewer columns, edges kept: every so many are drawn together, gaps stay.
   *
   * @param most columns that are wanted at most, gaps not counted
   */
  public Band thinned(int most) {
    int together = (int) Math.ceil((double) size() / most);
    if (together <= 1) {
      return this;
    }
    double[][] kept = new double[4][size()];
    int count = 0;
    int from = 0;
    while (from < size()) {
      int to = from + 1;
      while (to < size() && to - from < together && gap(to) == gap(from)) {
        to++;
      }
      kept[0][count] = (x[from] + x[to - 1]) / 2;
      kept[1][count] = Arrays.stream(low, from, to).min().orElseThrow();
      kept[2][count] = Arrays.stream(middle, from, to).average().orElseThrow();
      kept[3][count] = Arrays.stream(high, from, to).max().orElseThrow();
      count++;
      from = to;
    }
    for (int c = 0; c < kept.length; c++) {
      kept[c] = Arrays.copyOf(kept[c], count);
    }
    return new Band(kept[0], kept[1], kept[2], kept[3]);
  }

  private boolean gap(int i) {
    return Double.isNaN(middle[i]);
  }

  /** Number of columns. */
  public int size() {
    return x.length;
  }

  /** Abscissa, ascending. */
  public double x(int i) {
    return x[i];
  }

  /** Lower edge; NaN in a gap. */
  public double low(int i) {
    return low[i];
  }

  /** The curve; NaN in a gap. */
  public double middle(int i) {
    return middle[i];
  }

  /** Upper edge; NaN in a gap. */
  public double high(int i) {
    return high[i];
  }
}
