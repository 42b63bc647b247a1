package io.github.roundstar.sky;

import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.apache.commons.math3.util.FastMath;

/**
 * The axis that a mount turns about, beside the pole. It is brought there as its owner would:
 * tilted about the east-west line, then turned about the vertical. Exact rotation of vectors, no
 * small angles.
 *
 * @see "Chauvenet (1876), Manual of Spherical and Practical Astronomy, vol. 2, on the equatorial
 *     telescope; sign of the altitude error as in this package's page"
 */
public final class PolarAxis {
  private final Site site;
  private final Rotation mountToSky;

  /**
   * An axis in error.
   *
   * @param site where the mount stands; its elevated pole is the north one from latitude 0 up
   * @param azimuthArcmin east of the elevated pole, about the vertical [arcmin]
   * @param altitudeArcmin above the elevated pole [arcmin]
   */
  public PolarAxis(Site site, double azimuthArcmin, double altitudeArcmin) {
    this.site = site;
    double elevatedNorth = site.latitudeDegrees() < 0 ? -1 : 1;
    Rotation tilt =
        new Rotation(
            Vector3D.PLUS_I,
            elevatedNorth * FastMath.toRadians(altitudeArcmin / 60),
            RotationConvention.VECTOR_OPERATOR);
    Rotation turn =
        new Rotation(
            Vector3D.PLUS_K,
            -elevatedNorth * FastMath.toRadians(azimuthArcmin / 60),
            RotationConvention.VECTOR_OPERATOR);
    mountToSky = turn.compose(tilt, RotationConvention.VECTOR_OPERATOR);
  }

  /** North end of the axis, whichever end is elevated, as (east, north, up). */
  Vector3D northEnd() {
    return mountToSky.applyTo(site.horizontal(Vector3D.PLUS_K));
  }

  /**
   * Hour angle and declination of a star about this axis instead of the pole: what perfect circles
   * on the mount would read. While the mount turns at the sidereal rate, the star stays on its
   * pixel if the declination stays and the hour angle grows by that rate.
   */
  public StarPlace fromMount(StarPlace star) {
    return site.place(mountToSky.applyInverseTo(site.horizontal(star)));
  }

  /**
   * Position angle of the mount's north at the star [deg]; its change is the rotation of the field
   * against the camera, with the sign turned.
   */
  public double northPositionAngleDegrees(StarPlace star) {
    Vector3D toStar = site.horizontal(star);
    Vector3D east = site.horizontal(Vector3D.PLUS_K).crossProduct(toStar);
    Vector3D north = toStar.crossProduct(east);
    Vector3D axis = northEnd();
    return FastMath.toDegrees(FastMath.atan2(axis.dotProduct(east), axis.dotProduct(north)));
  }
}
