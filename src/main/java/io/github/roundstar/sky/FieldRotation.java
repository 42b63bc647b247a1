package io.github.roundstar.sky;

import org.apache.commons.math3.util.FastMath;

/**
 * How the field turns about the guide star when the polar axis is off: guiding keeps that one star
 * in place and nothing else. Camera and guide star look the same way.
 *
 * @see "Hook (1989), J. Brit. Astron. Assoc. 99, on the accuracy that photography asks of a polar
 *     axis"
 */
public final class FieldRotation {
  private static final double RADIANS_PER_SECOND =
      FastMath.toRadians(SiderealRate.ARCSEC_PER_SECOND / 3600);

  private FieldRotation() {}

  /**
   * Angle that the image turns on the sensor, north through east, while the sky goes on [deg].
   *
   * @param star true place of the guide star at the start, not at the pole
   * @param seconds how long
   */
  public static double imageTurnDegrees(PolarAxis axis, StarPlace star, double seconds) {
    double turned =
        axis.northPositionAngleDegrees(star) - axis.northPositionAngleDegrees(star.later(seconds));
    return turned - 360 * FastMath.rint(turned / 360);
  }

  /**
   * Length of the arc that a turn draws [arcsec].
   *
   * @param radiusArcsec distance from the guide star [arcsec]
   */
  public static double trailArcsec(double radiusArcsec, double turnDegrees) {
    return radiusArcsec * FastMath.toRadians(FastMath.abs(turnDegrees));
  }

  /**
   * Polar-axis error, on the sky, that draws a trail of a given length where it does most: the
   * bound over all hour angles [arcmin].
   *
   * @param radiusArcsec distance from the guide star, &gt; 0 [arcsec]
   * @param seconds exposure, &gt; 0 [s]
   * @param trailArcsec length of the trail [arcsec]
   * @param declinationDegrees of the guide star [deg]
   */
  public static double axisErrorArcmin(
      double radiusArcsec, double seconds, double trailArcsec, double declinationDegrees) {
    double radians =
        trailArcsec
            * FastMath.cos(FastMath.toRadians(declinationDegrees))
            / (radiusArcsec * RADIANS_PER_SECOND * seconds);
    return FastMath.toDegrees(radians) * 60;
  }
}
