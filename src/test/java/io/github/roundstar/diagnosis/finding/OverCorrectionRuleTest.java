package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import org.junit.jupiter.api.Test;

/** Strong corrections are told by the gain and by offsets that change sides. */
class OverCorrectionRuleTest {
  private static final OverCorrectionRule RULE = new OverCorrectionRule();

  private static MadeUpNight strong(double gain, double half, double lag1) {
    return sound()
        .gain(Axis.RA, gain, half, lag1)
        .replay(Axis.RA, gain, 0.7)
        .replay(Axis.RA, 0.4, 0.3)
        .replay(Axis.DEC, 0.6, 0.3);
  }

  @Test
  void chasingTheAirComesFirst() {
    Finding found = strong(0.8, 0.05, -0.3).judgedBy(RULE);

    assertThat(found.level()).isEqualTo(FIX_FIRST);
    assertThat(found.title()).isEqualTo("Corrections in RA are too strong and chase the air");
    assertThat(found.evidence()).contains("change sides");
  }

  /** White series of 2300 frames: the interval is 2 / sqrt(2300) = 0.042. */
  @Test
  void offsetsMustSurelyChangeSides() {
    assertThat(strong(0.8, 0.02, -0.045).levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(strong(0.8, 0.02, -0.039).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void gainSurelyAboveTheUsualNeedsNoMoreProof() {
    assertThat(strong(1.1, 0.1, 0.2).levelBy(RULE)).isEqualTo(FIX_FIRST);
  }

  @Test
  void gainThatMayBeTheBetterOneIsNotBlamed() {
    assertThat(strong(0.8, 0.5, -0.3).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void seeingAloneIsNoOverCorrection() {
    assertThat(sound().noise(Axis.RA, 0.8, 0.02).noise(Axis.DEC, 0.8, 0.02).levelBy(RULE))
        .isEqualTo(FINE);
  }

  @Test
  void cannotTellWithoutGain() {
    assertThat(sound().withoutLoop().levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }
}
