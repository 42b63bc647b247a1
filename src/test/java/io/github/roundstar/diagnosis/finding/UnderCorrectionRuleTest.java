package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WATCH;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import org.junit.jupiter.api.Test;

/** Weak corrections are told by the gain, not by what they leave. */
class UnderCorrectionRuleTest {
  private static final UnderCorrectionRule RULE = new UnderCorrectionRule();

  private static MadeUpNight weak(double gain, double half) {
    return sound()
        .gain(Axis.RA, gain, half, 0.6)
        .replay(Axis.RA, gain, 0.9)
        .replay(Axis.RA, 0.6, 0.4)
        .replay(Axis.DEC, 0.6, 0.3);
  }

  @Test
  void lowGainThatAnotherWouldCureComesFirst() {
    Finding found = weak(0.2, 0.05).judgedBy(RULE);

    assertThat(found.level()).isEqualTo(FIX_FIRST);
    assertThat(found.action().get(0)).contains("Raise the gain of RA by the factor 3.00");
  }

  @Test
  void gainWhoseIntervalReachesTheUsualIsNotBlamed() {
    assertThat(weak(0.2, 0.16).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void lowGainThatServesTheMountIsFine() {
    assertThat(
            sound()
                .gain(Axis.RA, 0.2, 0.05, 0)
                .replay(Axis.RA, 0.2, 0.40)
                .replay(Axis.RA, 0.6, 0.40)
                .levelBy(RULE))
        .isEqualTo(FINE);
  }

  /** By hand: slow parts go with the square of the gain, (0.15 / 0.6)^2 = 1/16 is left. */
  @Test
  void closedFormStandsInForTheReplay() {
    assertThat(sound().gain(Axis.RA, 0.15, 0.02, 0.6).part(Axis.RA, "drift-lag", 1).judgedBy(RULE))
        .extracting(Finding::level)
        .isEqualTo(FIX_FIRST);
  }

  @Test
  void weakPulsesTakeItOver() {
    MadeUpNight night = weak(0.2, 0.05).pulses(about(0.4, 0.03), about(1, 0.03));

    assertThat(night.levelBy(RULE)).isEqualTo(WATCH);
    assertThat(night.judgedBy(new PulseStrengthRule()).level()).isEqualTo(FIX_FIRST);
    assertThat(night.diagnosis().findings().get(0).code()).isEqualTo("pulse-strength");
  }

  @Test
  void cannotTellWithoutGain() {
    assertThat(
            sound()
                .withoutLoop()
                .because("/runs/*/loop", "no pulses were logged")
                .judgedBy(RULE)
                .evidence())
        .isEqualTo("No pulses were logged.");
  }
}
