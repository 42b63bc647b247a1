package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Finding;
import org.junit.jupiter.api.Test;

/** Clouds count by the time they took. */
class CloudsRuleTest {
  private static final CloudsRule RULE = new CloudsRule();

  @Test
  void fifthOfTheTimeComesFirst() {
    assertThat(sound().events("cloud", 2, null).frames(790, 210).levelBy(RULE))
        .isEqualTo(FIX_FIRST);
    assertThat(sound().events("cloud", 2, null).frames(810, 190).levelBy(RULE))
        .isEqualTo(WORTH_FIXING);
    assertThat(sound().events("cloud", 2, null).frames(910, 90).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void mountIsLeftAlone() {
    Finding found = sound().events("cloud", 2, null).frames(750, 250).judgedBy(RULE);

    assertThat(found.hoursPerNight()).isEqualTo(0.5);
    assertThat(found.action().get(0)).contains("the mount needs nothing");
  }

  @Test
  void cannotTellWhatTookAStarThatDidNotDim() {
    assertThat(sound().frames(800, 200).levelBy(RULE)).isEqualTo(CANNOT_TELL);
    assertThat(sound().frames(950, 50).levelBy(RULE)).isEqualTo(FINE);
  }
}
