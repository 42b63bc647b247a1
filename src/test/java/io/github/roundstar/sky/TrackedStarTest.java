package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A tracked star drifts as exact rotation, first-order formulas and published rules say. */
class TrackedStarTest {
  private static final double RATE = 15.041067 * 60 * Math.PI / (180 * 3600);

  /**
   * Chauvenet (1876) and Barrett (2016, Measuring Polar Axis Alignment Error) in first order: Dec
   * drift = -s w (u cos H + v sin H), RA drift = -s w sin d (v cos H - u sin H); no cosine of the
   * declination in the Dec drift. The exact rotation may differ by the second order.
   */
  @Tag("identity")
  @ParameterizedTest(name = "latitude {0}, hour angle {1}, declination {2}")
  @CsvSource({
    "50, 0, 0, 10, 0",
    "50, -90, 0, 0, 5",
    "50, 0, 60, 10, 0",
    "35, -45, 20, -5, 8",
    "35, 60, -10, 4, -3",
    "52.2, 30, 70, 15, 5",
    "-33, 0, 0, 10, 0",
    "-33, -90, 0, 0, 5",
    "-33, -40, -50, 5, -10",
    "-45, 75, 10, -7, 4"
  })
  void firstOrderFormulasHold(
      double latitude, double hourAngle, double declination, double azimuth, double altitude) {
    Site site = new Site(latitude);
    double s = Math.signum(latitude);
    double u = azimuth * 60 * Math.cos(Math.toRadians(latitude));
    double v = altitude * 60;
    double h = Math.toRadians(hourAngle);
    double d = Math.toRadians(declination);

    TrackedStar star =
        new TrackedStar(
            site,
            new PolarAxis(site, azimuth, altitude),
            Optional.empty(),
            new StarPlace(hourAngle, declination));
    double north = (star.northArcsec(30) - star.northArcsec(-30));
    double east = (star.eastArcsec(30) - star.eastArcsec(-30));

    double total = Math.hypot(u, v);
    double secondOrder = 4 * total * Math.toRadians(total / 3600) * RATE / Math.cos(d);
    assertThat(north)
        .isCloseTo(-s * RATE * (u * Math.cos(h) + v * Math.sin(h)), within(secondOrder));
    assertThat(east)
        .isCloseTo(
            -s * RATE * Math.sin(d) * (v * Math.cos(h) - u * Math.sin(h)), within(secondOrder));
  }

  /**
   * pyERFA 2.0.0.1: axis by pom00 (xp, yp, 0), third row; drifts in arcsec a minute at latitude 50
   * with the axis 300 arcsec high, and at latitude 35 with it 300 arcsec west and 480 high.
   */
  @Tag("published")
  @ParameterizedTest(name = "latitude {0}, hour angle {1}, declination {2}")
  @CsvSource({
    "50, -90, 0, 0, 300, 1.31258025, NaN",
    "50, 90, 0, 0, 300, -1.31258025, NaN",
    "35, -45, 20, -300, 480, 2.245031, -0.245360"
  })
  void driftAgreesWithAnAxisTurnedByAStandardRoutine(
      double latitude,
      double hourAngle,
      double declination,
      double azimuthArcsec,
      double altitudeArcsec,
      double north,
      double east) {
    Site site = new Site(latitude);
    PolarAxis axis = new PolarAxis(site, azimuthArcsec / 60, altitudeArcsec / 60);
    StarPlace middle = new StarPlace(hourAngle, declination);
    TrackedStar star = new TrackedStar(site, axis, Optional.empty(), middle.later(-30));
    assertThat(star.northArcsec(60)).isCloseTo(north, within(1e-4));
    if (!Double.isNaN(east)) {
      assertThat(star.eastArcsec(60)).isCloseTo(east, within(1e-3));
    }
  }

  /**
   * An arcsecond a minute on the meridian is 3.809 arcmin on the sky, and at latitude 50 an
   * adjuster turns 5.926 arcmin (12 / pi in solar instead of sidereal hours gives 3.82).
   */
  @Test
  @Tag("identity")
  void anArcsecondAMinuteIsAlmostFourArcminutes() {
    Site site = new Site(50);
    TrackedStar star =
        new TrackedStar(
            site, new PolarAxis(site, 5.926202534, 0), Optional.empty(), new StarPlace(-0.125, 0));

    assertThat(star.northArcsec(60)).isCloseTo(-1, within(1e-5));
  }

  @Test
  @Tag("identity")
  void refractionLooksLikeAnAxisTooLow() {
    Site site = new Site(50);
    TrackedStar star =
        new TrackedStar(
            site,
            new PolarAxis(site, 0, 0),
            Optional.of(new Refraction(1010, 10)),
            new StarPlace(45, 20));

    double altitudeError = -star.northArcsec(60) / RATE / Math.sin(Math.toRadians(45));

    // Two-term refraction, five-point derivative in Python, half a minute earlier.
    assertThat(altitudeError).isCloseTo(-59.86, within(0.4));
  }
}
