package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The refraction-slowed rate agrees with its formula's values and with the exact motion. */
class KingRateTest {
  private static final Refraction SEA_LEVEL = new Refraction(1010, 10);

  /**
   * King's rate rederived and evaluated in Python, k = 58.0704836 arcsec; the equator on the
   * meridian gives the handbooks' 15.0370 (common practice) to two units of its last digit.
   */
  @Tag("identity")
  @ParameterizedTest(name = "latitude {0}, hour angle {1}, declination {2}")
  @CsvSource({
    "50, 0, 0, 15.036832, 15.036832",
    "50, 0, 50, 15.036832, 15.041067",
    "50, 60, 0, 15.024129, 15.024129",
    "50, 45, 20, 15.036253, 15.037167",
    "35, 60, 30, 15.032766, 15.034512",
    "-33, 45, -20, 15.034779, 15.036457"
  })
  void rateIsSlowed(
      double latitude, double hourAngle, double declination, double truePole, double refracted) {
    Site site = new Site(latitude);
    StarPlace star = new StarPlace(hourAngle, declination);

    assertThat(KingRate.aboutTruePole(site, SEA_LEVEL, star)).isCloseTo(truePole, within(1e-6));
    assertThat(KingRate.aboutRefractedPole(site, SEA_LEVEL, star))
        .isCloseTo(refracted, within(1e-6));
  }

  /** What is left between the two is the cubic term of the refraction. */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource({"50, 10, 20", "35, -40, 30", "-33, 45, -20"})
  void agreesWithTheExactMotion(double latitude, double hourAngle, double declination) {
    Site site = new Site(latitude);
    StarPlace star = new StarPlace(hourAngle, declination);
    double lift = SEA_LEVEL.poleLiftArcsec(site).orElseThrow();

    assertThat(hourAngleRate(site, 0, star))
        .isCloseTo(KingRate.aboutTruePole(site, SEA_LEVEL, star), within(4e-5));
    assertThat(hourAngleRate(site, lift / 60, star))
        .isCloseTo(KingRate.aboutRefractedPole(site, SEA_LEVEL, star), within(4e-5));
  }

  /** Rate of the mount's own hour angle while it holds the refracted star [arcsec/s]. */
  private static double hourAngleRate(Site site, double altitudeArcmin, StarPlace star) {
    PolarAxis axis = new PolarAxis(site, 0, altitudeArcmin);
    StarPlace before = axis.fromMount(SEA_LEVEL.apparent(site, star.later(-10)));
    StarPlace after = axis.fromMount(SEA_LEVEL.apparent(site, star.later(10)));
    return (after.hourAngleDegrees() - before.hourAngleDegrees()) * 3600 / 20;
  }
}
