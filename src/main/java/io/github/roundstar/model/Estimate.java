package io.github.roundstar.model;

/**
 * A figure with its 95 % interval. How the interval was made stands with the estimator and, for
 * people, in the result's list of methods.
 *
 * @param value best value
 * @param lo95 lower end of the 95 % interval, at most {@code value}
 * @param hi95 upper end of the 95 % interval, at least {@code value}
 */
public record Estimate(double value, double lo95, double hi95) {
  /** Half width of a 95 % interval in standard errors, for a Gaussian error, to seven digits. */
  public static final double SIGMAS_95 = 1.959964;

  /** Checks that all three are finite and in order. */
  public Estimate {
    if (!(Double.isFinite(lo95) && Double.isFinite(hi95) && lo95 <= value && value <= hi95)) {
      throw new IllegalArgumentException(
          "not an interval: " + lo95 + " .. " + hi95 + " around " + value);
    }
  }

  /** The symmetric interval {@code value} &plusmn; {@code halfWidth}. */
  public static Estimate symmetric(double value, double halfWidth) {
    return new Estimate(value, value - halfWidth, value + halfWidth);
  }

  /** This estimate in another unit or sign: everything times {@code factor}. */
  public Estimate times(double factor) {
    double one = lo95 * factor;
    double other = hi95 * factor;
    return new Estimate(value * factor, Math.min(one, other), Math.max(one, other));
  }

  /** The same of a size, which is never below zero: the interval ends there. */
  public Estimate ofSize() {
    return lo95 >= 0 ? this : new Estimate(Math.max(0, value), 0, Math.max(0, hi95));
  }

  /** Whether {@code truth} lies inside the interval. */
  public boolean covers(double truth) {
    return lo95 <= truth && truth <= hi95;
  }
}
