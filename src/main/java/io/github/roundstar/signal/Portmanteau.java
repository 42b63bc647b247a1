package io.github.roundstar.signal;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * Whether what a model leaves is white, by the squares of its first autocorrelations together.
 *
 * @param chance chance of autocorrelations at least so large in white residuals, 0 to 1
 * @param lag at how many steps the largest stands
 * @param correlation the largest, -1 to 1
 * @see "Ljung &amp; Box (1978), Biometrika 65, 297"
 */
public record Portmanteau(double chance, int lag, double correlation) {
  /** So many autocorrelations are looked at; more would drown the first, which pulses answer. */
  private static final int LAGS = 20;

  /** Fewer residuals for each of them say nothing. */
  private static final int FEWEST_EACH = 5;

  /**
   * Tests.
   *
   * @param series residuals, each series by itself; their autocorrelations are pooled
   * @param fitted numbers of the noise model that were fitted to them
   * @return nothing where they are too few
   */
  public static Optional<Portmanteau> of(List<double[]> series, int fitted) {
    int size = series.stream().mapToInt(s -> s.length).sum();
    double squares = series.stream().mapToDouble(s -> LeastSquares.dot(s, s)).sum();
    if (size < FEWEST_EACH * LAGS || !(squares > 0)) {
      return Optional.empty();
    }
    double statistic = 0;
    int worst = 1;
    double most = 0;
    for (int lag = 1; lag <= LAGS; lag++) {
      double products = 0;
      int pairs = 0;
      for (double[] of : series) {
        for (int i = lag; i < of.length; i++) {
          products += of[i] * of[i - lag];
        }
        pairs += Math.max(0, of.length - lag);
      }
      double correlation = products / squares;
      statistic += correlation * correlation / Math.max(1, pairs);
      if (Math.abs(correlation) > Math.abs(most)) {
        worst = lag;
        most = correlation;
      }
    }
    statistic *= (double) size * (size + 2);
    double below = new ChiSquaredDistribution(LAGS - fitted).cumulativeProbability(statistic);
    return Optional.of(new Portmanteau(1 - below, worst, most));
  }
}
