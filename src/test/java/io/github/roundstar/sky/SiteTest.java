package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Altitude, azimuth and parallactic angle of a star. */
class SiteTest {
  /** Textbook triangle evaluated in NumPy 1.24 and differentiated as a check. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # latitude, H, dec, altitude, azimuth, parallactic angle
          50,  0,   0,   40.00000, 180.00000, 0.00000
          50,  0,   70,  70.00000, 0.00000,   180.00000
          50,  -45, 20,  43.55980, 113.51778, -38.84542
          35,  60,  -10, 17.68317, 243.52955, 48.12370
          -33, 20,  -30, 72.71289, 274.61137, 105.14263
          -33, 0,   -60, 63.00000, 180.00000, 0.00000
          """)
  void starStandsOverTheHorizon(
      double latitude,
      double hourAngle,
      double declination,
      double altitude,
      double azimuth,
      double parallacticAngle) {
    Site site = new Site(latitude);
    StarPlace star = new StarPlace(hourAngle, declination);

    assertThat(site.altitudeDegrees(star)).isCloseTo(altitude, within(1e-5));
    assertThat(site.azimuthDegrees(star)).isCloseTo(azimuth, within(1e-5));
    assertThat(site.parallacticAngleDegrees(star)).isCloseTo(parallacticAngle, within(1e-5));
  }

  /**
   * Rotation of the field of an alt-azimuth mount, dq/dt = -w cos(latitude) cos A / cos h with A
   * from north (textbook; magnitude 15.041 cos A cos(latitude) / cos h), evaluated in NumPy 1.24
   * [arcsec/s].
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "50, 0, 0, 12.620954",
    "50, 0, 70, -28.267959",
    "50, -45, 20, 5.323827",
    "35, 60, -10, 5.764236",
    "-33, 20, -30, -3.412857",
    "-33, 0, -60, 27.785824"
  })
  void parallacticAngleGrows(
      double latitude, double hourAngle, double declination, double arcsecPerSecond) {
    Site site = new Site(latitude);
    StarPlace star = new StarPlace(hourAngle, declination);
    double turned =
        site.parallacticAngleDegrees(star.later(1)) - site.parallacticAngleDegrees(star.later(-1));

    assertThat((turned - 360 * Math.rint(turned / 360)) * 1800)
        .isCloseTo(arcsecPerSecond, within(1e-5));
  }

  /** Meeus, Astronomical Algorithms, 2nd ed., example 13.b; azimuth there from the south. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource("38.921389, 64.352133, -6.719892, 15.1249, 248.0337")
  void agreesWithTheBook(
      double latitude, double hourAngle, double declination, double altitude, double azimuth) {
    Site site = new Site(latitude);
    StarPlace star = new StarPlace(hourAngle, declination);

    assertThat(site.altitudeDegrees(star)).isCloseTo(altitude, within(5e-5));
    assertThat(site.azimuthDegrees(star)).isCloseTo(azimuth, within(5e-5));
  }
}
