package io.github.roundstar.signal;

import java.util.Arrays;

/**
 * Allan deviation of evenly spaced values, which the tests hold against wander and noise: a route
 * to both that knows no likelihood. The values are averaged, not summed, as frequencies are.
 *
 * @see "Riley, Handbook of Frequency Stability Analysis, NIST SP 1065 (2008), section 5.2"
 */
public final class AllanDeviation {
  private AllanDeviation() {}

  /**
   * Neighbouring averages, none used twice.
   *
   * @param averaged values in one average, at least 1 and at most half of all
   */
  static double of(double[] values, int averaged) {
    double[] means = new double[values.length / averaged];
    Arrays.setAll(
        means,
        k -> Arrays.stream(values, k * averaged, (k + 1) * averaged).average().orElseThrow());
    return rootOfHalf(means, 1);
  }

  /** The same from averages that overlap, which scatters less. */
  public static double overlapping(double[] values, int averaged) {
    double[] means = new double[values.length - averaged + 1];
    Arrays.setAll(means, k -> Arrays.stream(values, k, k + averaged).average().orElseThrow());
    return rootOfHalf(means, averaged);
  }

  /**
   * What white noise and a random walk give on average: {@code s^2/m + q (2m^2 + 1)/(6m)}, the
   * variance of the difference of two neighbouring means of m values, halved.
   *
   * @param noiseVariance of a single value
   * @param stepVariance of the walk from one value to the next
   */
  public static double expected(double noiseVariance, double stepVariance, int averaged) {
    double m = averaged;
    return Math.sqrt(noiseVariance / m + stepVariance * (2 * m * m + 1) / (6 * m));
  }

  private static double rootOfHalf(double[] means, int later) {
    double squares = 0;
    for (int k = later; k < means.length; k++) {
      squares += (means[k] - means[k - later]) * (means[k] - means[k - later]);
    }
    return Math.sqrt(squares / (2 * (means.length - later)));
  }
}
