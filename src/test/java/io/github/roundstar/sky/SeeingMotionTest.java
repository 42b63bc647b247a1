package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Image motion, its averaging and the width of star images. */
class SeeingMotionTest {
  /** Spectrum of the tilt integrated with mpmath, 500 nm, centroid definition. */
  @Tag("published")
  @ParameterizedTest(name = "FWHM {0} arcsec, {1} m")
  @CsvSource({
    "1, 0.050, 0.472813",
    "1, 0.280, 0.354806",
    "2, 0.060, 0.817242",
    "2, 0.200, 0.668658",
    "3, 0.100, 1.052249"
  })
  void motionBelongsToAWidth(double fwhm, double aperture, double rms) {
    assertThat(SeeingMotion.axisRmsArcsec(fwhm, aperture)).isCloseTo(rms, within(2e-6));
    assertThat(SeeingMotion.fwhmArcsec(rms, aperture)).isCloseTo(fwhm, within(1e-5));
  }

  /** King (1983), evaluated in Python. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({"2, 10, 0.0849321800", "3, 20, 0.0636991350", "2.5, 100, 0.0106165225"})
  void photonsBlurTheCentroid(double fwhm, double snr, double arcsec) {
    assertThat(SeeingMotion.centroidArcsec(fwhm, snr)).isCloseTo(arcsec, within(1e-9));
  }

  /** FWHM at airmass 2 over that in the zenith, by the 3/5 power. */
  @Test
  @Tag("published")
  void starsWidenTowardTheHorizon() {
    assertThat(SeeingMotion.widening(30)).isCloseTo(1.5157166, within(1e-7));
  }

  @Test
  void shortExposureAveragesNothing() {
    assertThat(SeeingMotion.averaged(0.001, 0.01, 0.5)).isEqualTo(1);
    assertThat(SeeingMotion.averaged(0.64, 0.01, 0.5)).isCloseTo(0.125, within(1e-12));
  }
}
