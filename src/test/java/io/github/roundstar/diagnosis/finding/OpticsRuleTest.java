package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Finding;
import org.junit.jupiter.api.Test;

/** Only measured images tell. */
class OpticsRuleTest {
  private static final OpticsRule RULE = new OpticsRule();

  @Test
  void fifthOfTheExposuresComesFirst() {
    assertThat(sound().exposures(8, 2, "focus").levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(sound().exposures(17, 4, "focus").levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(sound().exposures(9, 1, "focus").levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(sound().exposures(10, 1, "focus").levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void roundExposuresWithoutItAreToBeExpected() {
    assertThat(sound().exposures(8, 2, "focus").judgedBy(RULE))
        .extracting(Finding::expectedRoundExposures)
        .isEqualTo(10);
  }

  @Test
  void cannotTellWithoutMeasuredImages() {
    assertThat(sound().levelBy(RULE)).isEqualTo(CANNOT_TELL);
    assertThat(sound().exposures(8, 2, "focus", null).levelBy(RULE)).isEqualTo(CANNOT_TELL);
    assertThat(sound().exposures(1, 1, "focus").levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }
}
