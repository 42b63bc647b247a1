package io.github.roundstar.results;

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
