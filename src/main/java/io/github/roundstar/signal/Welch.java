package io.github.roundstar.signal;

import io.github.roundstar.model.Estimate;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;

/**
 * Difference of two means whose variances need not be equal.
 *
 * @param difference second mean less first
 * @param standardError of the difference; 0 when nothing varies
 * @param degreesOfFreedom of Student's t
 * @see "Welch (1947), Biometrika 34, 28"
 */
public record Welch(double difference, double standardError, double degreesOfFreedom) {
  /** Confidence of intervals. */
  private static final double LEVEL = 0.95;

  /**
   * A mean as it enters.
   *
   * @param value the mean
   * @param variance of the mean, not of a sample
   * @param degreesOfFreedom that the variance is known with
   */
  public record Mean(double value, double variance, double degreesOfFreedom) {
    /** Mean of at least two samples, variance from their scatter. */
    public static Mean of(double[] samples) {
      Check.atLeast("number of samples", samples.length, 2);
      return new Mean(
          StatUtils.mean(samples),
          StatUtils.variance(samples) / samples.length,
          samples.length - 1);
    }
  }

  /** The difference with the degrees of freedom of Welch and Satterthwaite. */
  public static Welch between(Mean first, Mean second) {
    double sum = first.variance() + second.variance();
    double spread =
        first.variance() * first.variance() / first.degreesOfFreedom()
            + second.variance() * second.variance() / second.degreesOfFreedom();
    double freedom =
        spread > 0 ? sum * sum / spread : first.degreesOfFreedom() + second.degreesOfFreedom();
    return new Welch(second.value() - first.value(), Math.sqrt(sum), freedom);
  }

  /** Student's t of the difference; infinite when it differs and nothing varies. */
  public double t() {
    return difference == 0 ? 0 : difference / standardError;
  }

  /** Probability that chance alone makes so large a difference either way. */
  public double probability() {
    return Double.isInfinite(t()) ? 0 : 2 * student().cumulativeProbability(-Math.abs(t()));
  }

  /** The difference with its 95 % interval. */
  public Estimate interval() {
    return Estimate.symmetric(difference, least(1 - LEVEL));
  }

  /** Whether the 95 % interval lies between {@code -limit} and {@code limit}. */
  public boolean isWithin(double limit) {
    double room = limit - Math.abs(difference);
    return room > 0
        && (standardError == 0
            || student().cumulativeProbability(-room / standardError) < (1 - LEVEL) / 2);
  }

  /** The least difference whose probability is below {@code level}. */
  public double least(double level) {
    return student().inverseCumulativeProbability(1 - level / 2) * standardError;
  }

  private TDistribution student() {
    return new TDistribution(null, degreesOfFreedom);
  }
}
