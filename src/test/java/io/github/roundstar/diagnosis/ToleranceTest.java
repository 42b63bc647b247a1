package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Equipment.GuideOptics;
import io.github.roundstar.model.Equipment.ImagingOptics;
import io.github.roundstar.model.Equipment.Limits;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.sky.GuideTolerance;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What optics demand of a mount, against values from elsewhere. */
class ToleranceTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  /** Pixel 3.76 um at 530 mm, 6000 by 4000 pixels, ten minutes, guided in the middle. */
  private static Equipment camera(int binning, double seeing, double elongation) {
    Equipment unknown = Equipment.UNKNOWN;
    return new Equipment(
        unknown.site(),
        unknown.mount(),
        new GuideOptics(
            OptionalDouble.of(162),
            OptionalDouble.of(5.2),
            OptionalInt.empty(),
            NONE,
            false,
            OptionalDouble.of(0),
            OptionalDouble.of(0),
            Optional.empty()),
        new ImagingOptics(
            OptionalDouble.of(530),
            OptionalDouble.of(3.76),
            OptionalInt.of(6000),
            OptionalInt.of(4000),
            OptionalInt.of(binning),
            OptionalDouble.of(600),
            NONE,
            false),
        OptionalDouble.of(seeing),
        new Limits(elongation, NONE));
  }

  private static ToleranceQuestion question(Equipment equipment) {
    return new ToleranceQuestion(equipment, NONE, OptionalDouble.of(0), NONE, NONE, NONE);
  }

  private static double value(Answer<Double> answer) {
    return answer.value().orElseThrow();
  }

  /** 206.264806247 x pixel / focal length, worked out with NumPy: 1.4633125877 arcsec. */
  @Test
  @Tag("published")
  void scalesAreThoseOfTheOptics() {
    Tolerance one = Tolerance.of(question(camera(1, 3, 1.15)));
    Tolerance two = Tolerance.of(question(camera(2, 3, 1.15)));

    assertThat(value(one.arcsecPerPixel())).isCloseTo(1.4633125877, within(1e-9));
    assertThat(value(two.arcsecPerPixel())).isCloseTo(2 * 1.4633125877, within(1e-9));
    assertThat(value(one.pixelsPerFwhm())).isCloseTo(3 / 1.4633125877, within(1e-9));
    assertThat(value(one.guideScaleRatio())).isCloseTo(6.6208456326 / 1.4633125877, within(1e-8));
  }

  /**
   * Elongation of a round Gaussian star and guiding scatter by the eigenvalues of the summed
   * covariances (NumPy eigh): FWHM 2.0 and RMS 0.6 by 0.4 give 1.107666576, FWHM 1.8 and RMS 1.0 by
   * 0.3 give 1.532828989.
   */
  @ParameterizedTest(name = "FWHM {0}, elongation {1}")
  @Tag("published")
  @CsvSource({"2.0, 1.107666576, 0.6, 0.4", "1.8, 1.532828989, 1.0, 0.3"})
  void bothAxesInTheLogsRatioReachTheLimit(
      double fwhm, double elongation, double worse, double better) {
    Tolerance asked =
        Tolerance.of(
            new ToleranceQuestion(
                camera(1, fwhm, elongation),
                NONE,
                OptionalDouble.of(0),
                OptionalDouble.of(better / worse),
                NONE,
                NONE));

    assertThat(value(asked.sharedRmsArcsec())).isCloseTo(worse, within(1e-8));
  }

  /**
   * The same source for a drift: covariance 0.25 in both axes, FWHM 2.0 and an even drift of 3
   * arcsec give 1.331211195. The scatter of both axes is part of the round star here.
   */
  @Test
  @Tag("published")
  void driftReachesTheLimit() {
    double fwhm = 2.3548200450309493 * Math.sqrt(0.8493218003 * 0.8493218003 + 0.25);
    Tolerance asked = Tolerance.of(question(camera(1, fwhm, 1.331211195)));

    assertThat(GuideTolerance.trailArcsec(fwhm, 1.331211195)).isCloseTo(3, within(1e-7));
    // The weight that shapes are measured with follows the flat trail farther than its moments.
    assertThat(value(asked.driftArcsec())).isBetween(2.7, 2.9);
    // One axis alone: the drift's standard deviation, length / sqrt(12).
    assertThat(value(asked.axisRmsArcsec())).isCloseTo(3 / Math.sqrt(12), within(1e-7));
  }

  /**
   * Common practice, no source: tracking of the order of five arc seconds or better, depending on
   * focal length. Stars are 6 arcsec wide through short lenses, 2 through long telescopes.
   */
  @ParameterizedTest(name = "stars {0} arcsec wide")
  @CsvSource({"6, 4.5, 5.5", "4, 3, 4", "2, 1.5, 2"})
  void driftIsOfTheOrderOfFiveArcsecOrLess(double fwhm, double least, double most) {
    assertThat(value(Tolerance.of(question(camera(1, fwhm, 1.15))).driftArcsec()))
        .isBetween(least, most);
  }

  /**
   * Hook's relation for field rotation with the sidereal rate: 5 arcmin of axis error trail
   * 0.2290886 arcsec in ten minutes one degree from the guide star at the equator, 0.4581771 at
   * declination 60 (exact vectors in FieldRotationTest).
   */
  @ParameterizedTest(name = "declination {0}")
  @Tag("published")
  @CsvSource({"0, 0.2290886", "60, 0.4581771"})
  void polarAxisErrorDrawsHalfAPixelInTheCorner(double declination, double trailAtOneDegree) {
    double scale = 1.4633125877;
    double cornerDegrees = Math.hypot(3000, 2000) * scale / 3600;
    Tolerance asked =
        Tolerance.of(
            new ToleranceQuestion(
                camera(1, 3, 1.15), NONE, OptionalDouble.of(declination), NONE, NONE, NONE));

    assertThat(value(asked.polarArcmin()))
        .isCloseTo(5 * scale / 2 / (trailAtOneDegree * cornerDegrees), within(1e-5));
  }

  /** The longest exposure, tried on the sinusoid itself at a thousand beginnings. */
  @Test
  @Tag("identity")
  void unguidedExposureKeepsThePeriodicErrorUnderTheDrift() {
    double declination = 40;
    Tolerance asked =
        Tolerance.of(
            new ToleranceQuestion(
                camera(1, 3, 1.15),
                NONE,
                OptionalDouble.of(declination),
                NONE,
                OptionalDouble.of(6),
                OptionalDouble.of(479)));
    double seconds = value(asked.unguidedSeconds());
    double longest = 0;
    for (int i = 0; i < 1000; i++) {
      double begin = i * 479 / 1000.0;
      longest = Math.max(longest, Math.abs(worm(begin + seconds) - worm(begin)));
    }

    assertThat(longest * Math.cos(Math.toRadians(declination)))
        .isCloseTo(value(asked.driftArcsec()), within(1e-4));
  }

  private static double worm(double seconds) {
    return 6 * Math.sin(2 * Math.PI * seconds / 479);
  }

  /** Airy disc of 80 mm at 550 nm, 1.029 lambda / D = 1.4592 arcsec (Born and Wolf), and air. */
  @Test
  @Tag("published")
  void apertureWidensTheStar() {
    Tolerance asked =
        Tolerance.of(
            new ToleranceQuestion(
                camera(1, 2, 1.15), OptionalDouble.of(80), OptionalDouble.of(0), NONE, NONE, NONE));

    assertThat(value(asked.starFwhmArcsec())).isCloseTo(Math.hypot(2, 1.4592), within(1e-3));
  }

  @Test
  void everythingMissingHasAReason() {
    Tolerance asked = Tolerance.of(question(Equipment.UNKNOWN));

    assertThat(asked.arcsecPerPixel().because()).contains("focal length");
    assertThat(asked.starFwhmArcsec().because()).contains("seeing");
    assertThat(asked.axisRmsArcsec().because()).contains("seeing");
    assertThat(asked.sharedRmsArcsec().because()).contains("ratio");
    assertThat(asked.polarArcmin().because()).contains("exposure");
    assertThat(asked.unguidedSeconds().value()).isEmpty();
    assertThat(asked.guideScaleRatio().because()).contains("guide camera");
  }

  /** Both axes alike never make a star oval; a swing below the limit allows any exposure. */
  @Test
  void noLimitIsInfinity() {
    Tolerance asked =
        Tolerance.of(
            new ToleranceQuestion(
                camera(1, 3, 1.15),
                NONE,
                OptionalDouble.of(0),
                OptionalDouble.of(1),
                OptionalDouble.of(0.5),
                OptionalDouble.of(479)));

    assertThat(value(asked.sharedRmsArcsec())).isInfinite();
    assertThat(value(asked.unguidedSeconds())).isInfinite();
  }
}
