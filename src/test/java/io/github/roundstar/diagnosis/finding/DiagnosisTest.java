package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.NotComputed;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One finding per code, the weightiest first, and a reason for everything missing. */
class DiagnosisTest {
  /** The codes of the result's contract. */
  private static final String CODES =
      "periodic-error polar-axis tracking-rate dec-backlash over-correction under-correction"
          + " seeing-bound jolts clouds pulse-strength pixel-scale camera-angle stuck-star"
          + " axis-imbalance slow-settling field-rotation differential-flexure"
          + " differential-refraction atmospheric-dispersion optics log-too-short";

  @Test
  void everyCodeIsJudgedOnce() {
    assertThat(sound().diagnosis().findings())
        .extracting(Finding::code)
        .containsExactlyInAnyOrder(CODES.split(" "));
    assertThat(Arrays.stream(FindingCode.values()).map(FindingCode::word))
        .containsExactlyInAnyOrder(CODES.split(" "));
  }

  @Test
  void soundNightHasNothingToFix() {
    assertThat(sound().diagnosis().findings())
        .noneMatch(finding -> finding.level().atLeast(Level.WATCH));
  }

  @Test
  void largerShareLeads() {
    List<Finding> found =
        sound()
            .worm(6, 0.1)
            .play(about(4, 0.1))
            .part(Axis.RA, "periodic:worm", 1)
            .part(Axis.DEC, "backlash", 1.5)
            .diagnosis()
            .findings();

    assertThat(found.subList(0, 2))
        .extracting(Finding::code)
        .containsExactly("dec-backlash", "periodic-error");
    assertThat(found).extracting(Finding::level).isSorted();
  }

  @Test
  void faultOfTheSetUpComesBeforeWhatItMakesDoubtful() {
    assertThat(
            sound()
                .worm(6, 0.1)
                .part(Axis.RA, "periodic:worm", 1)
                .crossAxis(about(30, 1))
                .diagnosis()
                .findings())
        .first()
        .extracting(Finding::code)
        .isEqualTo("camera-angle");
  }

  @Test
  void whatMattersComesWithEvidenceStepsAndConfidence() {
    for (Finding finding :
        sound()
            .worm(6, 0.1)
            .part(Axis.RA, "periodic:worm", 1)
            .events("gust", 50, 3.0)
            .part(Axis.DEC, "jolts", 1)
            .seconds(600)
            .diagnosis()
            .findings()) {
      assertThat(finding.title()).isNotBlank().doesNotEndWith(".");
      assertThat(finding.evidence()).endsWith(".").doesNotContain("null", "NaN");
      if (finding.level().atLeast(Level.WATCH)) {
        assertThat(finding.action()).isNotEmpty();
        assertThat(finding.confidence()).isBetween(0.5, 0.99);
      }
    }
  }

  /** By hand: a worm of 8 of the whole 8 - 6.9 + noise: more than four times what trails. */
  @Test
  void shareKeepsWithinTheWholeWherePartsCancel() {
    Finding worm =
        sound()
            .worm(6, 0.1)
            .part(Axis.RA, "periodic:worm", 8)
            .part(Axis.RA, "cross-terms", -6.9)
            .judgedBy(new PeriodicErrorRule());

    assertThat(worm.shareOfTrailing()).isEqualTo(1);
    assertThat(worm.evidence()).contains("100 % (100 .. 100) of the star's trailing");
    assertThat(worm.level()).isEqualTo(Level.FIX_FIRST);
  }

  @Test
  void shareIsNotNegative() {
    Finding worm =
        sound()
            .worm(6, 0.1)
            .part(Axis.RA, "periodic:worm", -0.3)
            .part(Axis.RA, "drift-lag", 2)
            .judgedBy(new PeriodicErrorRule());

    assertThat(worm.shareOfTrailing()).isZero();
  }

  @Test
  void falseStarComesBeforeTheMotionThatItMakesUp() {
    assertThat(
            sound()
                .worm(6, 0.1)
                .part(Axis.RA, "periodic:worm", 8)
                .part(Axis.RA, "cross-terms", -6.9)
                .events("stuck-star", 1, null)
                .diagnosis()
                .findings())
        .first()
        .extracting(Finding::code)
        .isEqualTo("stuck-star");
  }

  @Test
  void everyMissingFigureHasItsReason() {
    assertThat(sound().diagnosis().notComputed())
        .extracting(NotComputed::figure)
        .contains("/findings/*/confidence", "/findings/*/shareOfTrailing");
  }
}
