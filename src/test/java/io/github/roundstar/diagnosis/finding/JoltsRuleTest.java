package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WATCH;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import org.junit.jupiter.api.Test;

/** Jolts count by what they did this night. */
class JoltsRuleTest {
  private static final JoltsRule RULE = new JoltsRule();

  private static MadeUpNight jolts(String kind, int count) {
    return sound().events(kind, count, 3.0).part(Axis.RA, "jolts", 0.8);
  }

  @Test
  void manyGustsComeFirstAndAreTheWinds() {
    Finding found = jolts("gust", 40).judgedBy(RULE);

    assertThat(found.level()).isEqualTo(FIX_FIRST);
    assertThat(found.title()).isEqualTo("Wind jolted the star 40 times");
  }

  @Test
  void shiftsThatStayAskForCablesAndBalance() {
    assertThat(jolts("lasting-shift", 40).judgedBy(RULE).action().get(0)).contains("cables");
  }

  /** By hand as for the worm: 0.1073 and 0.0529 arcsec^2. */
  @Test
  void tenthOfTheTrailingIsTheLimit() {
    assertThat(jolts("knock", 2).part(Axis.RA, "jolts", 0.110).levelBy(RULE))
        .isEqualTo(WORTH_FIXING);
    assertThat(jolts("knock", 2).part(Axis.RA, "jolts", 0.104).levelBy(RULE)).isEqualTo(WATCH);
    assertThat(jolts("knock", 2).part(Axis.RA, "jolts", 0.052).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void nightWithoutJoltsIsFine() {
    assertThat(sound().levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void cannotTellWithoutBudget() {
    assertThat(sound().withoutBudget("none").levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }
}
