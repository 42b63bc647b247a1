package io.github.roundstar.sky;

import java.util.Optional;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * How the air moves the field's centre against a guide star beside it: both are lifted, the lower
 * one more, and the difference changes while they cross the sky. The camera turns with a mount
 * whose axis points to the true pole, and guiding keeps the guide star where it appears.
 *
 * @param site where
 * @param air the air there
 * @param guideStar true place of the guide star at the time zero
 * @param eastArcsec true place of the field's centre, east of the guide star in its tangent plane
 *     [arcsec]
 * @param northArcsec the same, north [arcsec]
 */
public record DifferentialRefraction(
    Site site, Refraction air, StarPlace guideStar, double eastArcsec, double northArcsec) {
  private static final double ARCSEC_PER_RADIAN = Math.toDegrees(1) * 3600;

  /** A place in a tangent plane [arcsec]. */
  public record Offset(double eastArcsec, double northArcsec) {}

  /**
   * Move of the centre's stars on the sensor between two times; nothing where the model of the air
   * does not hold, or at the pole.
   *
   * @param from since the time zero [s]
   * @param to since the time zero [s]
   */
  public Optional<Offset> shift(double from, double to) {
    if (tooLow(from) || tooLow(to)) {
      return Optional.empty();
    }
    Vector3D before = apparent(from);
    Vector3D after = apparent(to);
    return Optional.of(
        new Offset(
            (after.getX() - before.getX()) * ARCSEC_PER_RADIAN,
            (after.getY() - before.getY()) * ARCSEC_PER_RADIAN));
  }

  private boolean tooLow(double seconds) {
    double lowest =
        Math.min(
            site.altitudeDegrees(guideStar.later(seconds)),
            site.altitudeDegrees(centre(guideStar.later(seconds))));
    return lowest < Refraction.LOWEST_ALTITUDE_DEGREES;
  }

  private StarPlace centre(StarPlace star) {
    Vector3D away =
        new Vector3D(
            1,
            star.polar(),
            eastArcsec / ARCSEC_PER_RADIAN,
            east(star),
            northArcsec / ARCSEC_PER_RADIAN,
            north(star));
    return StarPlace.of(away.normalize());
  }

  /** Apparent centre in the tangent plane of the apparent guide star: (east, north) [rad]. */
  private Vector3D apparent(double seconds) {
    StarPlace star = guideStar.later(seconds);
    StarPlace seen = air.apparent(site, star);
    Vector3D centre = air.apparent(site, centre(star)).polar();
    double ahead = centre.dotProduct(seen.polar());
    return new Vector3D(
        centre.dotProduct(east(seen)) / ahead, centre.dotProduct(north(seen)) / ahead, 0);
  }

  private static Vector3D east(StarPlace star) {
    double hourAngle = Math.toRadians(star.hourAngleDegrees());
    return new Vector3D(Math.sin(hourAngle), -Math.cos(hourAngle), 0);
  }

  private static Vector3D north(StarPlace star) {
    return east(star).crossProduct(star.polar());
  }
}
