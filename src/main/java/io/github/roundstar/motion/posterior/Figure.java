package io.github.roundstar.motion.posterior;

import io.github.roundstar.model.Estimate;
import java.util.Arrays;

/**
 * A figure of the posterior.
 *
 * @param estimate median and the interval between the quantiles of 2.5 and 97.5 %
 * @param learned how much of it the log taught: one minus posterior over prior width, 0 to 1
 */
public record Figure(Estimate estimate, double learned) {
  static Figure of(NormalMixture mixture, double priorWidth) {
    return of(mixture.quantile(0.025), mixture.quantile(0.5), mixture.quantile(0.975), priorWidth);
  }

  /** Of equally likely values. */
  public static Figure of(double[] draws, double priorWidth) {
    double[] sorted = draws.clone();
    Arrays.sort(sorted);
    return of(at(sorted, 0.025), at(sorted, 0.5), at(sorted, 0.975), priorWidth);
  }

  static Figure of(double low, double middle, double high, double priorWidth) {
    return new Figure(
        new Estimate(middle, Math.min(low, middle), Math.max(high, middle)),
        Math.max(0, Math.min(1, 1 - (high - low) / priorWidth)));
  }

  /** Quantile of sorted values, each standing in the middle of its share. */
  private static double at(double[] sorted, double probability) {
    double at = Math.max(0, Math.min(sorted.length - 1, probability * sorted.length - 0.5));
    int i = Math.min(sorted.length - 2, (int) at);
    return i < 0 ? sorted[0] : sorted[i] + (at - i) * (sorted[i + 1] - sorted[i]);
  }

  /** The same in another unit. */
  public Figure times(double factor) {
    return new Figure(estimate.times(factor), learned);
  }
}
