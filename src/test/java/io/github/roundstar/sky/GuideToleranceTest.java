package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How much scatter, drift and swing a round star bears. */
class GuideToleranceTest {
  /**
   * Second moments of star, scatter and drift added in NumPy (eigh): FWHM, variances east and north
   * and axis ratio of the sum.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({"2.0, 0.36, 0.16, 1.107666576", "1.8, 1.00, 0.09, 1.532828989"})
  void scatterInBothAxesMakesTheElongation(
      double fwhm, double east, double north, double elongation) {
    double ratio = Math.sqrt(north / east);

    assertThat(GuideTolerance.axisRmsArcsec(fwhm, elongation, ratio))
        .isCloseTo(Math.sqrt(east), within(1e-7));
  }

  /** The same source: scatter of 0.5 arcsec either way and a drift of 3 arcsec. */
  @Test
  @Tag("published")
  void driftMakesTheElongation() {
    double withScatter = Math.hypot(2.0, 0.5 * GuideTolerance.FWHM_PER_SIGMA);

    assertThat(GuideTolerance.trailArcsec(withScatter, 1.331211195)).isCloseTo(3, within(1e-7));
  }

  @Test
  @Tag("identity")
  void perfectOtherAxisIsTheOldRule() {
    assertThat(GuideTolerance.axisRmsArcsec(2.5, 1.15, 0))
        .isEqualTo(GuideTolerance.axisRmsArcsec(2.5, 1.15));
  }

  @Test
  void evenScatterNeverStretchesAStar() {
    assertThat(GuideTolerance.axisRmsArcsec(2.5, 1.15, 1)).isInfinite();
    assertThat(GuideTolerance.exposureSeconds(480, 2, 4)).isInfinite();
  }

  /** Over the longest exposure the fastest part of the swing moves the star by the limit. */
  @Test
  @Tag("identity")
  void exposureFitsTheFastestPartOfTheSwing() {
    double seconds = GuideTolerance.exposureSeconds(480, 6, 2);
    double half = Math.PI / 480 * seconds;

    assertThat(6 * (Math.sin(half) - Math.sin(-half))).isCloseTo(2, within(1e-12));
  }

  /** Geometry in NumPy: 206.264806 pixel / focal length. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "3.75, 240, 1, 3.2228875976",
    "2.4, 1000, 1, 0.4950355350",
    "4.5, 2032, 2, 0.9135744371"
  })
  void pixelCoversTheSky(double pixel, double focal, int binning, double arcsec) {
    assertThat(ImageScale.arcsecPerPixel(focal, pixel, binning)).isCloseTo(arcsec, within(1e-9));
  }

  /** The Airy disc's half width: 1.029 lambda / D, 116 mm giving one arcsecond at 550 nm. */
  @Test
  @Tag("published")
  void smallAperturesBlur() {
    assertThat(ImageScale.diffractionFwhmArcsec(116.74)).isCloseTo(1, within(1e-4));
  }
}
