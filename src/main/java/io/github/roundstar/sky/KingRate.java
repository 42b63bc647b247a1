package io.github.roundstar.sky;

import org.apache.commons.math3.util.FastMath;

/**
 * The tracking rate that follows a star through air: refraction changes with altitude, so the star
 * seems to turn more slowly. With R = k tan z and G = cos&phi; (cos&phi; cos&delta; + sin&phi;
 * sin&delta; cos H) / (cos&delta; sin&sup2;h), less tan&delta; cos H / tan&phi; for an axis on the
 * refracted pole, the rate is the sidereal one times 1 - k G.
 *
 * @see "King (1931), A Manual of Celestial Photography, for the rate; rederived from the exact
 *     motion in this package"
 */
public final class KingRate {
  private KingRate() {}

  /** Rate of a mount whose axis points at the true pole [arcsec/s]. */
  public static double aboutTruePole(Site site, Refraction air, StarPlace star) {
    return slowed(air, byAltitude(site, star));
  }

  /** Rate of a mount whose axis points at the refracted pole, latitude not 0 [arcsec/s]. */
  public static double aboutRefractedPole(Site site, Refraction air, StarPlace star) {
    double declination = FastMath.toRadians(star.declinationDegrees());
    double byPole =
        FastMath.tan(declination)
            * FastMath.cos(FastMath.toRadians(star.hourAngleDegrees()))
            / FastMath.tan(FastMath.toRadians(site.latitudeDegrees()));
    return slowed(air, byAltitude(site, star) - byPole);
  }

  private static double slowed(Refraction air, double slowing) {
    double k = FastMath.toRadians(air.linearArcsec() / 3600);
    return SiderealRate.ARCSEC_PER_SECOND * (1 - k * slowing);
  }

  private static double byAltitude(Site site, StarPlace star) {
    double latitude = FastMath.toRadians(site.latitudeDegrees());
    double declination = FastMath.toRadians(star.declinationDegrees());
    double cosineH = FastMath.cos(FastMath.toRadians(star.hourAngleDegrees()));
    double sineAltitude = FastMath.sin(FastMath.toRadians(site.altitudeDegrees(star)));
    return FastMath.cos(latitude)
        * (FastMath.cos(latitude) * FastMath.cos(declination)
            + FastMath.sin(latitude) * FastMath.sin(declination) * cosineH)
        / (FastMath.cos(declination) * sineAltitude * sineAltitude);
  }
}
