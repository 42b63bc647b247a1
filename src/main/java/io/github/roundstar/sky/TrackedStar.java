package io.github.roundstar.sky;

import java.util.Optional;
import org.apache.commons.math3.util.FastMath;

/**
 * A star in the field of a mount that turns at exactly the sidereal rate about an axis beside the
 * pole, seen through air: where it goes when nothing corrects.
 */
public final class TrackedStar {
  private static final double FULL_TURN_ARCSEC = 1_296_000;

  private final Site site;
  private final PolarAxis axis;
  private final Optional<Refraction> air;
  private final StarPlace start;
  private final StarPlace first;

  /**
   * A star.
   *
   * @param start its true place at time zero
   */
  public TrackedStar(Site site, PolarAxis axis, Optional<Refraction> air, StarPlace start) {
    this.site = site;
    this.axis = axis;
    this.air = air;
    this.start = start;
    this.first = seen(0);
  }

  /** Motion north since time zero [arcsec]. */
  public double northArcsec(double seconds) {
    return (seen(seconds).declinationDegrees() - first.declinationDegrees()) * 3600;
  }

  /** Motion east since time zero, on the sky [arcsec]. */
  public double eastArcsec(double seconds) {
    StarPlace now = seen(seconds);
    double turned = (now.hourAngleDegrees() - first.hourAngleDegrees()) * 3600;
    double gain = turned - seconds * SiderealRate.ARCSEC_PER_SECOND;
    gain -= FULL_TURN_ARCSEC * FastMath.rint(gain / FULL_TURN_ARCSEC);
    return -gain * FastMath.cos(FastMath.toRadians(now.declinationDegrees()));
  }

  /**
   * Altitude of the star at a time, refraction left out [deg].
   *
   * @param seconds since time zero
   */
  public double altitudeDegrees(double seconds) {
    return site.altitudeDegrees(start.later(seconds));
  }

  private StarPlace seen(double seconds) {
    StarPlace star = start.later(seconds);
    return axis.fromMount(air.map(lifting -> lifting.apparent(site, star)).orElse(star));
  }
}
