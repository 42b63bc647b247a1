package io.github.roundstar.sky;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.apache.commons.math3.util.FastMath;

/**
 * The horizon of a place on Earth.
 *
 * @param latitudeDegrees north positive [deg, -90..90]
 */
public record Site(double latitudeDegrees) {
  /** Checks the latitude. */
  public Site {
    if (!(Math.abs(latitudeDegrees) <= 90)) {
      throw new IllegalArgumentException("latitude " + latitudeDegrees + " is outside [-90, 90]");
    }
  }

  /** Altitude above the horizon, refraction left out [deg]. */
  public double altitudeDegrees(StarPlace star) {
    Vector3D v = horizontal(star);
    return FastMath.toDegrees(FastMath.atan2(v.getZ(), FastMath.hypot(v.getX(), v.getY())));
  }

  /** Azimuth from north through east [deg, 0..360). */
  public double azimuthDegrees(StarPlace star) {
    Vector3D v = horizontal(star);
    double degrees = FastMath.toDegrees(FastMath.atan2(v.getX(), v.getY()));
    return degrees < 0 ? degrees + 360 : degrees;
  }

  /**
   * Parallactic angle: position angle of the zenith at the star [deg, -180..180]. Its sign is that
   * of the hour angle's sine, in both hemispheres. At the zenith it is not defined and comes out as
   * any number.
   *
   * @see "Smart &amp; Green, Textbook on Spherical Astronomy: the astronomical triangle"
   */
  public double parallacticAngleDegrees(StarPlace star) {
    double latitude = FastMath.toRadians(latitudeDegrees);
    double hourAngle = FastMath.toRadians(star.hourAngleDegrees());
    double declination = FastMath.toRadians(star.declinationDegrees());
    double towardEast = FastMath.sin(hourAngle) * FastMath.cos(latitude);
    double towardNorth =
        FastMath.sin(latitude) * FastMath.cos(declination)
            - FastMath.cos(latitude) * FastMath.sin(declination) * FastMath.cos(hourAngle);
    return FastMath.toDegrees(FastMath.atan2(towardEast, towardNorth));
  }

  /** Unit vector (east, north, up) of a star. */
  Vector3D horizontal(StarPlace star) {
    return horizontal(star.polar());
  }

  /** The same direction as (east, north, up). */
  Vector3D horizontal(Vector3D polar) {
    double latitude = FastMath.toRadians(latitudeDegrees);
    double sine = FastMath.sin(latitude);
    double cosine = FastMath.cos(latitude);
    return new Vector3D(
        -polar.getY(),
        cosine * polar.getZ() - sine * polar.getX(),
        sine * polar.getZ() + cosine * polar.getX());
  }

  /** Place of a unit vector (east, north, up). */
  StarPlace place(Vector3D horizontal) {
    double latitude = FastMath.toRadians(latitudeDegrees);
    double sine = FastMath.sin(latitude);
    double cosine = FastMath.cos(latitude);
    return StarPlace.of(
        new Vector3D(
            cosine * horizontal.getZ() - sine * horizontal.getY(),
            -horizontal.getX(),
            sine * horizontal.getZ() + cosine * horizontal.getY()));
  }
}
