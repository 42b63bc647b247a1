package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The air moves the star by as much, and as fast, as turbulence theory says. */
class ImageMotionTest {
  /**
   * Kolmogorov turbulence, centroid tilt, one axis, 500 nm, no outer scale: integrals of the phase
   * spectrum in mpmath, constant 0.169803 (see Tokovinin 2002, PASP 114, 1156).
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({"1.0, 50, 0.472813", "2.0, 60, 0.817242", "2.0, 280, 0.632193", "3.0, 100, 1.052249"})
  void instantaneousMotionFollowsSeeingAndAperture(
      double fwhm, double apertureMillimetres, double arcsec) {
    double variance =
        ImageMotion.varianceArcsec2(fwhm, apertureMillimetres / 1000, Double.POSITIVE_INFINITY);

    assertThat(Math.sqrt(variance)).isCloseTo(arcsec, within(2e-6));
  }

  @Test
  @Tag("identity")
  void shortExposuresSeeAllOfItAndLongOnesLittle() {
    SkyPlan.Seeing seeing = new SkyPlan.Seeing(2.5, 60, 6, 25);
    double instantaneous = ImageMotion.varianceArcsec2(2.5, 0.06, 25);

    double brief = variance(seeing, 1e-4, 3);
    double guide = variance(seeing, 2, 3);
    double longer = variance(seeing, 8, 9);

    assertThat(brief).isCloseTo(instantaneous, within(0.05 * instantaneous));
    assertThat(guide).isLessThan(0.2 * instantaneous);
    // Far beyond the outer time constant, an average of four times as long has a quarter.
    assertThat(longer).isCloseTo(guide / 4, within(0.06 * guide));
  }

  /**
   * Between the corners the spectrum falls as f^(-2/3): the variance of averages then falls as
   * T^(-1/3), so eight times the exposure halves it.
   */
  @Test
  @Tag("identity")
  void averagingFollowsThePowerLawBetweenTheCorners() {
    SkyPlan.Seeing seeing = new SkyPlan.Seeing(2.5, 60, 10, 10_000);

    double ratio = variance(seeing, 0.1, 200) / variance(seeing, 0.8, 200);

    assertThat(ratio).isCloseTo(2, within(0.25));
  }

  private static double variance(SkyPlan.Seeing seeing, double exposure, double cadence) {
    ImageMotion motion = new ImageMotion(seeing, NoiseStream.of(9, "test", 1));
    int n = 20_000;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double mean = motion.mean(exposure);
      squares += mean * mean;
      motion.skip(cadence - exposure);
    }
    return squares / n;
  }
}
