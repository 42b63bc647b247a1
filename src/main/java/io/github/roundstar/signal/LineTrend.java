package io.github.roundstar.signal;

import io.github.roundstar.model.Estimate;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * A straight line through a series, with a slope error for residuals that follow each other.
 *
 * <p>The samples count as n (1 - r) / (1 + r) independent ones, r the lag-1 autocorrelation of the
 * residuals, and never as more than n. Anything periodic left in the residuals makes the error
 * meaningless: fit it jointly with {@link LeastSquares} instead.
 *
 * @param slopePerSecond slope
 * @param valueAtZero value of the line at time 0
 * @param slopeStandardError standard error of the slope
 * @param effectiveCount independent samples, above 2
 * @see "Santer et al. (2000), J. Geophys. Res. 105, 7337"
 */
public record LineTrend(
    double slopePerSecond, double valueAtZero, double slopeStandardError, double effectiveCount) {
  /** Fits the line; absent if there are at most two samples or two independent ones. */
  public static Optional<LineTrend> of(Series series) {
    return LeastSquares.withConstant(series.size(), series.seconds())
        .map(design -> design.fit(series.values()))
        .flatMap(LineTrend::of);
  }

  private static Optional<LineTrend> of(LinearFit fit) {
    double n = fit.design().size();
    double r = Autocorrelation.lag1(fit.residuals());
    double effective = Math.min(n, n * (1 - r) / (1 + r));
    if (!(effective > 2)) {
      return Optional.empty();
    }
    double error = fit.standardError(1) * Math.sqrt(fit.degreesOfFreedom() / (effective - 2));
    return Optional.of(new LineTrend(fit.coefficient(1), fit.coefficient(0), error, effective));
  }

  /** The slope with its 95 % interval, Student's t with {@code effectiveCount} - 2. */
  public Estimate slope() {
    double t = new TDistribution(null, effectiveCount - 2).inverseCumulativeProbability(0.975);
    return Estimate.symmetric(slopePerSecond, t * slopeStandardError);
  }
}
