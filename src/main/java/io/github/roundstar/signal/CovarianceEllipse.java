package io.github.roundstar.signal;

import java.util.OptionalDouble;

/**
 * The ellipse of a covariance of two directions at right angles.
 *
 * @param varianceEast variance along the first, unit&sup2;
 * @param varianceNorth variance along the second
 * @param covariance between the two
 */
public record CovarianceEllipse(double varianceEast, double varianceNorth, double covariance) {
  /** Share of a product below which a difference of two such is nothing but rounding. */
  private static final double ROUNDING = 1e-14;

  /** Checks that the three can be a covariance. */
  public CovarianceEllipse {
    if (!(varianceEast >= 0
        && varianceNorth >= 0
        && covariance * covariance <= varianceEast * varianceNorth * (1 + 1e-9))) {
      throw new IllegalArgumentException(
          "not a covariance: " + varianceEast + ", " + varianceNorth + ", " + covariance);
    }
  }

  /** Standard deviation along the long axis. */
  public double majorSigma() {
    return Math.sqrt(mean() + excess());
  }

  /** Standard deviation along the short axis. */
  public double minorSigma() {
    // From the determinant: the difference would lose the digits of a thin ellipse.
    double product = varianceEast * varianceNorth;
    double determinant = product - covariance * covariance;
    return determinant <= ROUNDING * product ? 0 : Math.sqrt(determinant / (mean() + excess()));
  }

  /** Long axis over short, at least 1; absent when the short one is zero. */
  public OptionalDouble elongation() {
    double minor = minorSigma();
    return minor == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.max(1, majorSigma() / minor));
  }

  /** Angle of the long axis from north through east, [0, 180) degrees; absent for a circle. */
  public OptionalDouble positionAngleDegrees() {
    if (excess() == 0) {
      return OptionalDouble.empty();
    }
    double angle = Math.toDegrees(Math.atan2(2 * covariance, varianceNorth - varianceEast)) / 2;
    return OptionalDouble.of(angle < 0 ? (angle + 180) % 180 : angle);
  }

  private double mean() {
    return (varianceEast + varianceNorth) / 2;
  }

  private double excess() {
    return Math.hypot((varianceEast - varianceNorth) / 2, covariance);
  }
}
