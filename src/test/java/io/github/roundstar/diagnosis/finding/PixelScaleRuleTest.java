package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Finding;
import org.junit.jupiter.api.Test;

/** One factor in both axes. */
class PixelScaleRuleTest {
  private static final PixelScaleRule RULE = new PixelScaleRule();

  @Test
  void oneFactorInBothAxesMakesEveryArcsecDoubtful() {
    Finding found = sound().pulses(about(0.5, 0.03), about(0.52, 0.03)).judgedBy(RULE);

    assertThat(found.level()).isEqualTo(FIX_FIRST);
    assertThat(found.title()).contains("0.51", "guide rate");
  }

  @Test
  void quarterIsTheLimitAtTheNearerBound() {
    assertThat(both(0.71, 0.03).levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(both(0.73, 0.03).levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(both(0.95, 0.03).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void twoFactorsAreNotOneScale() {
    assertThat(sound().pulses(about(0.5, 0.03), about(0.63, 0.03)).levelBy(RULE)).isEqualTo(FINE);
    assertThat(sound().pulses(about(0.5, 0.03), about(0.55, 0.03)).levelBy(RULE))
        .isEqualTo(FIX_FIRST);
    assertThat(sound().pulses(about(0.5, 0.03), about(1, 0.03)).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void cannotTellWithoutBothAxes() {
    assertThat(sound().withoutResponse("no pulses").levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }

  private static MadeUpNight both(double strength, double half) {
    return sound().pulses(about(strength, half), about(strength, half));
  }
}
