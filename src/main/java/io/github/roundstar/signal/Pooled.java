package io.github.roundstar.signal;

import io.github.roundstar.model.Estimate;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * One estimate out of several of the same figure, each with an interval of its own: a
 * random-effects mean, whose interval holds what the single ones scatter beyond their own errors.
 *
 * @see "Paule &amp; Mandel (1982), J. Res. Natl. Bur. Stand. 87, 377"
 */
public final class Pooled {

  private static final int HALVINGS = 50;

  private Pooled() {}

  /**
   * The mean.
   *
   * <p>Each is weighted by one over the sum of its own variance and the variance between them, as
   * Paule and Mandel find it. The interval is Gaussian when nothing scatters beyond the single
   * errors; else Student's, with one less than the number of estimates as degrees of freedom, over
   * the scatter's share of the variance: what comes from the single errors is known.
   *
   * @param estimates at least one; of an interval with unequal sides the wider one counts
   */
  public static Estimate of(List<Estimate> estimates) {
    Check.atLeast("number of estimates", estimates.size(), 1);
    if (estimates.size() == 1) {
      return estimates.get(0);
    }
    double between = between(estimates);
    double weights = 0;
    double squares = 0;
    double sum = 0;
    for (Estimate estimate : estimates) {
      double weight = 1 / (variance(estimate) + between);
      weights += weight;
      squares += weight * weight;
      sum += weight * estimate.value();
    }
    double variance = 1 / weights;
    double ofScatter = between * squares / (weights * weights);
    return Estimate.symmetric(
        sum / weights, quantile(estimates.size() - 1, variance, ofScatter) * Math.sqrt(variance));
  }

  /**
   * The mean of estimates of one and the same number, weighted by their errors; when they differ by
   * more than these allow, the interval is widened by the root of their mean square over it.
   *
   * @param estimates at least one
   * @see "Birge (1932), Phys. Rev. 40, 207"
   */
  public static Estimate ofOneTruth(List<Estimate> estimates) {
    Check.atLeast("number of estimates", estimates.size(), 1);
    double weights = 0;
    double sum = 0;
    for (Estimate estimate : estimates) {
      weights += 1 / variance(estimate);
      sum += estimate.value() / variance(estimate);
    }
    double excess = estimates.size() == 1 ? 1 : squares(estimates, 0) / (estimates.size() - 1);
    return Estimate.symmetric(
        sum / weights, Estimate.SIGMAS_95 * Math.sqrt(Math.max(1, excess) / weights));
  }

  private static double quantile(int free, double variance, double ofScatter) {
    if (ofScatter == 0) {
      return Estimate.SIGMAS_95;
    }
    double ratio = variance / ofScatter;
    return new TDistribution(free * ratio).inverseCumulativeProbability(0.975);
  }

  /**
   * Variance between the true values, never negative: the one with which the weighted squares about
   * the weighted mean come to as many as there are estimates, less one.
   */
  private static double between(List<Estimate> estimates) {
    if (squares(estimates, 0) <= estimates.size() - 1) {
      return 0;
    }
    double low = 0;
    double high = 1e-12;
    while (squares(estimates, high) > estimates.size() - 1) {
      low = high;
      high *= 4;
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      boolean tooSmall = squares(estimates, middle) > estimates.size() - 1;
      low = tooSmall ? middle : low;
      high = tooSmall ? high : middle;
    }
    return (low + high) / 2;
  }

  private static double squares(List<Estimate> estimates, double between) {
    double weights = 0;
    double sum = 0;
    for (Estimate estimate : estimates) {
      double weight = 1 / (variance(estimate) + between);
      weights += weight;
      sum += weight * estimate.value();
    }
    double squares = 0;
    for (Estimate estimate : estimates) {
      double away = estimate.value() - sum / weights;
      squares += away * away / (variance(estimate) + between);
    }
    return squares;
  }

  private static double variance(Estimate estimate) {
    double half = Math.max(estimate.hi95() - estimate.value(), estimate.value() - estimate.lo95());
    double rounding = 1e-12 * (Math.abs(estimate.value()) + 1e-3);
    return half * half / (Estimate.SIGMAS_95 * Estimate.SIGMAS_95) + rounding * rounding;
  }
}
