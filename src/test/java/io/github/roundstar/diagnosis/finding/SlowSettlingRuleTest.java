package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Settling counts by the share of the night it takes. */
class SlowSettlingRuleTest {
  private static final SlowSettlingRule RULE = new SlowSettlingRule();

  @Test
  void fifthOfTheNightComesFirst() {
    assertThat(sound().settling(20, 75.0, 75.0, 0.41).levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(sound().settling(20, 75.0, 75.0, 0.39).levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(sound().settling(20, 35.0, 35.0, 0.21).levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(sound().settling(20, 35.0, 35.0, 0.19).levelBy(RULE)).isEqualTo(FINE);
  }

  /** By hand: (150 - 75) / 1.28 / 75 = 0.78; 1.96 * 0.78 / sqrt 20 = 34 % of the share. */
  @Test
  void spreadOfTheTimesWidensTheInterval() {
    assertThat(sound().settling(20, 75.0, 150.0, 0.41).levelBy(RULE)).isEqualTo(WORTH_FIXING);
  }

  @Test
  void cannotTellFromTwoDithers() {
    assertThat(sound().settling(2, 75.0, 80.0, 0.5).levelBy(RULE)).isEqualTo(CANNOT_TELL);
    assertThat(sound().settling(5, null, null, 0).levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }
}
