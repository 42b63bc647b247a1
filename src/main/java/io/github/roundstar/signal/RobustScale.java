package io.github.roundstar.signal;

/**
 * Scatter that a few wild values cannot raise: the median absolute deviation from the median,
 * scaled so that it estimates the standard deviation of Gaussian values.
 *
 * @see "Hampel (1974), J. Am. Stat. Assoc. 69, 383"
 */
public final class RobustScale {
  /** One over the 75 % point of the unit Gaussian. */
  private static final double GAUSSIAN = 1.482602218505602;

  private RobustScale() {}

  /**
   * 1.4826 times the median of |x - median(x)|; 0 when more than half of the values are equal.
   *
   * @param values at least one, finite; left alone
   */
  public static double of(double[] values) {
    double median = Quantile.median(values);
    double[] deviations = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      deviations[i] = Math.abs(values[i] - median);
    }
    return GAUSSIAN * Quantile.median(deviations);
  }
}
