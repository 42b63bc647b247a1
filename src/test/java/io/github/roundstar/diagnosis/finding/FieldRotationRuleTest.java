package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** By the images, or by the trail that the axis makes in the corner. */
class FieldRotationRuleTest {
  private static final FieldRotationRule RULE = new FieldRotationRule();

  @Test
  void exposuresLostToItComeFirst() {
    assertThat(sound().exposures(8, 2, "field-rotation").levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(sound().exposures(17, 4, "field-rotation").levelBy(RULE)).isEqualTo(WORTH_FIXING);
  }

  @Test
  void trailInTheCornerDecidesWithoutImages() {
    String optics =
        "[imaging]\nfocal_length_mm = 750\npixel_um = 3.8\n[sky]\nseeing_fwhm_arcsec = 2.5\n";
    assertThat(sound().equipment(optics).axis(about(100, 10), 2.33, "curvature").levelBy(RULE))
        .isEqualTo(FIX_FIRST);
    assertThat(sound().equipment(optics).axis(about(100, 10), 0.4, "curvature").levelBy(RULE))
        .isEqualTo(FINE);
  }

  @Test
  void cannotTellWithoutAxisAndImages() {
    assertThat(sound().because("/polarAxis", "no latitude").judgedBy(RULE).evidence())
        .isEqualTo("No latitude.");
  }
}
