package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Finding;
import org.junit.jupiter.api.Test;

/** A star that answers no pulse. */
class StuckStarRuleTest {
  private static final StuckStarRule RULE = new StuckStarRule();

  @Test
  void runOnAFalseStarComesFirst() {
    Finding found = sound().withoutResponse("none").events("stuck-star", 1, null).judgedBy(RULE);

    assertThat(found.level()).isEqualTo(FIX_FIRST);
    assertThat(found.hoursPerNight()).isEqualTo(2);
  }

  @Test
  void starThatAnswersIsFine() {
    assertThat(sound().levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void cannotTellWithoutResponse() {
    assertThat(sound().withoutResponse("no pulses").judgedBy(RULE).evidence())
        .isEqualTo("No pulses.");
  }
}
