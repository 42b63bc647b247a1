package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.WATCH;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Three turns of the worm, twenty minutes and two hundred frames. */
class LogTooShortRuleTest {
  private static final LogTooShortRule RULE = new LogTooShortRule();

  /** Three turns of 480 s are 24 min. */
  @Test
  void threeTurnsOfTheWormAreNeeded() {
    assertThat(sound().seconds(1439).levelBy(RULE)).isEqualTo(WATCH);
    assertThat(sound().seconds(1441).levelBy(RULE)).isEqualTo(FINE);
    assertThat(sound().equipment("[mount]\nworm_period_s = 300\n").seconds(1201).levelBy(RULE))
        .isEqualTo(FINE);
  }

  @Test
  void saysHowMuchMoreToRecord() {
    assertThat(sound().seconds(600).judgedBy(RULE).title())
        .isEqualTo("The log is too short: record 14 minutes more in one go");
  }

  @Test
  void fewFramesAreTooFewHoweverLong() {
    assertThat(sound().frames(199, 0).levelBy(RULE)).isEqualTo(WATCH);
    assertThat(sound().frames(200, 0).levelBy(RULE)).isEqualTo(FINE);
    assertThat(sound().frames(0, 0).levelBy(RULE)).isEqualTo(WATCH);
  }
}
