package io.github.roundstar.signal;

import io.github.roundstar.model.Estimate;
import java.util.OptionalDouble;

/**
 * How far a shape is stretched and along which direction, as a vector that can be averaged: its
 * length is ln(elongation), its direction twice the angle of the long axis. The mean of many such
 * vectors has no bias from noise, while the mean of elongations has: noise makes each exceed 1.
 *
 * @param along ln(elongation) cos(2 angle)
 * @param aslant ln(elongation) sin(2 angle)
 * @see "Bernstein &amp; Jarvis (2002), AJ 123, 583, section 2.2: conformal shear"
 */
public record Stretch(double along, double aslant) {
  /** Logarithm of an elongation of a thousand: longer images are lines, whatever the interval. */
  private static final double LONGEST = Math.log(1000);

  /** Radius that holds 95 % of a plane normal cloud of unit variance per axis. */
  private static final double PLANE_95 = Math.sqrt(-2 * Math.log(0.05));

  /** The stretch of a covariance; angles from the first axis towards the second. */
  public static Stretch of(double varianceFirst, double varianceSecond, double covariance) {
    double mean = (varianceFirst + varianceSecond) / 2;
    double difference = (varianceFirst - varianceSecond) / 2;
    double excess = Math.hypot(difference, covariance);
    if (excess == 0) {
      return new Stretch(0, 0);
    }
    // ln of the ratio of the standard deviations: artanh(excess / mean).
    double ratio = Math.min(excess / mean, 1 - 1e-12);
    double size = Math.log((1 + ratio) / (1 - ratio)) / 2;
    return new Stretch(size * difference / excess, size * covariance / excess);
  }

  /** This and another. */
  public Stretch plus(Stretch other) {
    return new Stretch(along + other.along, aslant + other.aslant);
  }

  /** This without another. */
  public Stretch less(Stretch other) {
    return new Stretch(along - other.along, aslant - other.aslant);
  }

  /** So many times as far. */
  public Stretch times(double factor) {
    return new Stretch(factor * along, factor * aslant);
  }

  /** ln(elongation). */
  public double size() {
    return Math.hypot(along, aslant);
  }

  /** Long axis over short. */
  public double elongation() {
    return Math.exp(size());
  }

  /** Angle of the long axis from the first axis towards the second [deg, 0..180). */
  public double angleDegrees() {
    double angle = Math.toDegrees(Math.atan2(aslant, along)) / 2;
    return angle < 0 ? (angle + 180) % 180 : angle;
  }

  /**
   * The elongation with its 95 % interval: symmetric in its logarithm, with 1 as the lower end
   * where the joint 95 % region of both parts holds a circle.
   *
   * @param sigma standard error of either part
   */
  public Estimate elongation(double sigma) {
    double size = Math.hypot(along, aslant);
    double low = size <= PLANE_95 * sigma ? 0 : Math.max(0, size - Estimate.SIGMAS_95 * sigma);
    double high = Math.max(size, Math.min(LONGEST, size + Estimate.SIGMAS_95 * sigma));
    return new Estimate(Math.exp(size), Math.exp(low), Math.exp(high));
  }

  /** The angle, where the interval leaves no doubt that there is one. */
  public OptionalDouble angleDegrees(double sigma) {
    return elongation(sigma).lo95() > 1
        ? OptionalDouble.of(angleDegrees())
        : OptionalDouble.empty();
  }
}
