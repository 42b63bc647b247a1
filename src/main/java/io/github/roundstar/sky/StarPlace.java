package io.github.roundstar.sky;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.apache.commons.math3.util.FastMath;

/**
 * Where a star stands, against a pole and its meridian: those of the sky, or those of a mount (see
 * {@link PolarAxis#fromMount}).
 *
 * @param hourAngleDegrees west positive [deg]; results lie in [-180, 180]
 * @param declinationDegrees north positive [deg, -90..90]
 */
public record StarPlace(double hourAngleDegrees, double declinationDegrees) {
  /** Checks the declination. */
  public StarPlace {
    if (!(Math.abs(declinationDegrees) <= 90) || !Double.isFinite(hourAngleDegrees)) {
      throw new IllegalArgumentException(
          "no place: hour angle " + hourAngleDegrees + ", declination " + declinationDegrees);
    }
  }

  /** Hour angles in hours, as models and logs have them. */
  public static StarPlace ofHours(double hourAngleHours, double declinationDegrees) {
    return new StarPlace(hourAngleHours * 15, declinationDegrees);
  }

  /** Where the sky's turning has brought the star some seconds later. */
  public StarPlace later(double seconds) {
    double degrees = hourAngleDegrees + seconds * SiderealRate.ARCSEC_PER_SECOND / 3600;
    return new StarPlace(degrees, declinationDegrees);
  }

  /** Of a unit vector (x to the equator on the meridian, y to the west point, z to the pole). */
  static StarPlace of(Vector3D polar) {
    return new StarPlace(
        FastMath.toDegrees(FastMath.atan2(polar.getY(), polar.getX())),
        FastMath.toDegrees(
            FastMath.atan2(polar.getZ(), FastMath.hypot(polar.getX(), polar.getY()))));
  }

  /** As a unit vector (x to the equator on the meridian, y to the west point, z to the pole). */
  Vector3D polar() {
    double hourAngle = FastMath.toRadians(hourAngleDegrees);
    double declination = FastMath.toRadians(declinationDegrees);
    double equatorial = FastMath.cos(declination);
    return new Vector3D(
        equatorial * FastMath.cos(hourAngle),
        equatorial * FastMath.sin(hourAngle),
        FastMath.sin(declination));
  }
}
