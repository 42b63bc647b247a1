package io.github.roundstar.signal;

import java.util.Arrays;

/** Correlation of a series with itself, a step later. */
public final class Autocorrelation {
  private Autocorrelation() {}

  /**
   * Sum of (x[i] - m)(x[i+1] - m) over the sum of (x[i] - m)&sup2;, m the mean. 0 for values that
   * do not vary; biased low for short series.
   *
   * @param values at least one, in order of time
   * @see "NIST Statistical Reference Datasets, univariate summary statistics"
   */
  public static double lag1(double[] values) {
    double[] centred = centred(values);
    double[] later = Arrays.copyOfRange(centred, 1, centred.length);
    double products = LeastSquares.dot(later, centred);
    double squares = LeastSquares.dot(centred, centred);
    return squares == 0 ? 0 : products / squares;
  }

  /** Values less their mean, in two passes so that a large mean costs no digits. */
  static double[] centred(double[] values) {
    Check.atLeast("number of values", values.length, 1);
    double[] centred = values.clone();
    for (int pass = 0; pass < 2; pass++) {
      double sum = 0;
      for (double value : centred) {
        sum += value;
      }
      double mean = sum / centred.length;
      for (int i = 0; i < centred.length; i++) {
        centred[i] -= mean;
      }
    }
    return centred;
  }
}
