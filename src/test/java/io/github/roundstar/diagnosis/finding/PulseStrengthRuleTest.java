package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WATCH;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Pulses off in one axis, or by another factor in each. */
class PulseStrengthRuleTest {
  private static final PulseStrengthRule RULE = new PulseStrengthRule();

  @Test
  void quarterAtTheNearerBoundComesFirst() {
    assertThat(ra(0.70, 0.04).levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(ra(0.70, 0.06).levelBy(RULE)).isEqualTo(WORTH_FIXING);
  }

  @Test
  void tenthIsWorthFixing() {
    assertThat(ra(1.14, 0.03).levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(ra(1.12, 0.03).levelBy(RULE)).isEqualTo(WATCH);
    assertThat(ra(1.02, 0.03).levelBy(RULE)).isEqualTo(FINE);
    assertThat(ra(1.3, 0.04).judgedBy(RULE).title())
        .isEqualTo("Pulses in RA move the star by 30 % more than they should");
  }

  @Test
  void oneFactorInBothAxesIsThePixelScale() {
    MadeUpNight both = sound().pulses(about(0.6, 0.03), about(0.62, 0.03));

    assertThat(both.levelBy(RULE)).isEqualTo(FINE);
    assertThat(both.levelBy(new PixelScaleRule())).isEqualTo(FIX_FIRST);
  }

  @Test
  void oneSoundAxisDoesNotSpeakForTheOther() {
    MadeUpNight decOnly = sound().withoutRaResponse("too few pulses in RA");

    assertThat(decOnly.levelBy(RULE)).isEqualTo(CANNOT_TELL);
    assertThat(decOnly.judgedBy(RULE).evidence()).isEqualTo("Too few pulses in RA.");
  }

  @Test
  void cannotTellWithoutResponse() {
    assertThat(sound().withoutResponse("too few pulses").judgedBy(RULE).evidence())
        .isEqualTo("Too few pulses.");
    assertThat(ra(1, 0.3).levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }

  private static MadeUpNight ra(double strength, double half) {
    return sound().pulses(about(strength, half), about(1, 0.03));
  }
}
