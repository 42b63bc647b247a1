package io.github.roundstar.signal;

import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;

/** Quantiles of type 7: linear between the order statistics, the extremes at shares 0 and 1. */
public final class Quantile {
  private Quantile() {}

  /**
   * The value below which the given share of the values lies.
   *
   * @param values at least one, finite, in any order; left alone
   * @param share 0 to 1
   * @see "Hyndman &amp; Fan (1996), The American Statistician 50, 361, definition 7"
   */
  public static double of(double[] values, double share) {
    Check.atLeast("number of values", values.length, 1);
    Check.finite("value", values);
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException("share " + share + " is outside [0, 1]");
    }
    // The library refuses a percentile of zero; the tiniest one is the minimum all the same.
    return new Percentile()
        .withEstimationType(EstimationType.R_7)
        .evaluate(values, Math.max(100 * share, Double.MIN_VALUE));
  }

  /** The middle value, or the mean of the two middle ones. */
  public static double median(double[] values) {
    return of(values, 0.5);
  }
}
