package io.github.roundstar.worlds;

/**
 * Where a star seems to go for a mount whose polar axis is misplaced: vectors turned, refraction
 * included, nothing linearised. Vectors are (east, north, up).
 *
 * <p>Axis by the elevated end: azimuth positive = turned east about the vertical, altitude positive
 * = above the true pole. Refraction: R = A tan z0 + B tan^3 z0 of the apparent zenith distance,
 * with A and B as ERFA's refco gives them for 1010 hPa, 10 C, dry air, 0.55 micrometre, scaled with
 * the density of the air.
 */
final class SkyPath {
  static final double SIDEREAL_ARCSEC_PER_SECOND = 15.041067;
  static final double SIDEREAL_DAY_SECONDS = 86164.0905;
  static final double ARCSEC = Math.toRadians(1 / 3600.0);

  private final double latitude;
  private final double[] axis;
  private final double[] upper;
  private final double[] west;
  private final double refractionA;
  private final double refractionB;

  SkyPath(
      double latitudeDeg,
      double azimuthArcsec,
      double altitudeArcsec,
      double pressureHpa,
      double temperatureC) {
    latitude = Math.toRadians(latitudeDeg);
    double side = latitude >= 0 ? 1 : -1;
    double azimuth = azimuthArcsec * ARCSEC;
    double altitude = Math.abs(latitude) + altitudeArcsec * ARCSEC;
    double[] elevated = {
      Math.sin(azimuth) * Math.cos(altitude),
      side * Math.cos(azimuth) * Math.cos(altitude),
      Math.sin(altitude)
    };
    axis = scaled(elevated, side);
    double[] equator = {0, -Math.sin(latitude), Math.cos(latitude)};
    upper = unit(plus(equator, scaled(axis, -dot(equator, axis))));
    west = cross(upper, axis);
    double density = pressureHpa / 1010 * 283.15 / (273.15 + temperatureC);
    refractionA = 58.0704836 * density * ARCSEC;
    refractionB = -0.0650243 * density * ARCSEC;
  }

  /** North end of the mount's axis. */
  double[] axis() {
    return axis.clone();
  }

  /** Refraction [arcsec] at a true altitude; never below zero. */
  double refractionArcsec(double trueAltitudeRad) {
    return refraction(Math.PI / 2 - trueAltitudeRad) / ARCSEC;
  }

  private double refraction(double trueZenithDistance) {
    double apparent = trueZenithDistance;
    double refraction = 0;
    for (int turn = 0; turn < 8; turn++) {
      double tan = Math.tan(apparent);
      refraction = refractionA * tan + refractionB * tan * tan * tan;
      apparent = trueZenithDistance - refraction;
    }
    return Math.max(0, refraction);
  }

  /** True altitude [rad] of a place given by hour angle and declination [rad]. */
  double altitude(double hourAngle, double declination) {
    return Math.asin(star(hourAngle, declination)[2]);
  }

  private double[] star(double hourAngle, double declination) {
    double toEquator = Math.cos(declination) * Math.cos(hourAngle);
    double toWest = Math.cos(declination) * Math.sin(hourAngle);
    double toPole = Math.sin(declination);
    return new double[] {
      -toWest,
      -Math.sin(latitude) * toEquator + Math.cos(latitude) * toPole,
      Math.cos(latitude) * toEquator + Math.sin(latitude) * toPole
    };
  }

  /** Hour angle and declination [rad] in the mount's own circles, of the place as it is seen. */
  double[] inMount(double hourAngle, double declination) {
    double[] s = star(hourAngle, declination);
    double trueAltitude = Math.asin(s[2]);
    double seen = trueAltitude + refraction(Math.PI / 2 - trueAltitude);
    double level = Math.hypot(s[0], s[1]);
    double[] apparent = s;
    if (level > 1e-12) {
      double stretch = Math.cos(seen) / level;
      apparent = new double[] {s[0] * stretch, s[1] * stretch, Math.sin(seen)};
    }
    return new double[] {
      Math.atan2(dot(apparent, west), dot(apparent, upper)), Math.asin(dot(apparent, axis))
    };
  }

  /**
   * Offset (east, north) [arcsec on the sky] of the star after {@code seconds}, for a mount that
   * was on it at hour angle {@code hourAngle} and turns at the sidereal rate.
   */
  double[] offset(double hourAngle, double declination, double seconds) {
    double turned = SIDEREAL_ARCSEC_PER_SECOND * seconds * ARCSEC;
    double[] before = inMount(hourAngle, declination);
    double[] after = inMount(hourAngle + turned, declination);
    double lag = Math.IEEEremainder(after[0] - before[0] - turned, 2 * Math.PI);
    return new double[] {-lag * Math.cos(before[1]) / ARCSEC, (after[1] - before[1]) / ARCSEC};
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  private static double[] plus(double[] a, double[] b) {
    return new double[] {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
  }

  private static double[] scaled(double[] a, double by) {
    return new double[] {a[0] * by, a[1] * by, a[2] * by};
  }

  private static double[] unit(double[] a) {
    return scaled(a, 1 / Math.sqrt(dot(a, a)));
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }
}
