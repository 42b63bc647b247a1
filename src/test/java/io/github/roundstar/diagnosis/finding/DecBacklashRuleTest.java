package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
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

/** Play or sticking in Dec matters by what it does to the star, not by its width. */
class DecBacklashRuleTest {
  private static final DecBacklashRule RULE = new DecBacklashRule();

  @Test
  void playThatMovesTheStarComesFirst() {
    Finding found = sound().play(about(4, 0.2)).part(Axis.DEC, "backlash", 0.6).judgedBy(RULE);

    assertThat(found.level()).isEqualTo(FIX_FIRST);
    assertThat(found.title()).contains("4.00 arcsec of play");
    assertThat(found.action().get(0)).contains("one way only");
    assertThat(found.caution()).contains("never force a gear mesh");
  }

  /** By hand as for the worm: 0.1073 arcsec^2 when the width is known exactly. */
  @Test
  void tenthOfTheTrailingIsTheLimit() {
    assertThat(sound().play(about(4, 0)).part(Axis.DEC, "backlash", 0.110).levelBy(RULE))
        .isEqualTo(WORTH_FIXING);
    assertThat(sound().play(about(4, 0)).part(Axis.DEC, "backlash", 0.104).levelBy(RULE))
        .isEqualTo(WATCH);
  }

  @Test
  void widthThatMayBeNothingIsNotClaimed() {
    assertThat(sound().play(about(1, 1.5)).part(Axis.DEC, "backlash", 0.3).levelBy(RULE))
        .isEqualTo(CANNOT_TELL);
  }

  @Test
  void widePlayThatGuidingNeverCrossesIsFine() {
    assertThat(sound().play(about(6, 0.2)).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void cannotTellWithoutWidthOrBudget() {
    assertThat(sound().play(null).levelBy(RULE)).isEqualTo(CANNOT_TELL);
    assertThat(sound().withoutBudget("no loop").levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }

  @Test
  void stickingThatMovesTheStarIsNamed() {
    Finding found = sound().sticking(about(1, 0.02)).part(Axis.DEC, "backlash", 0.6).judgedBy(RULE);

    assertThat(found.level()).isEqualTo(FIX_FIRST);
    assertThat(found.title()).isEqualTo("Dec sticks: it withholds 1.00 arcsec of pulses");
    assertThat(String.join(" ", found.action())).contains("not too tight").contains("qualified");
    assertThat(found.caution()).contains("warranty").contains("never force a gear mesh");
  }

  @Test
  void stickingThatHardlyMovesTheStarIsFine() {
    assertThat(sound().sticking(about(0.2, 0.02)).levelBy(RULE)).isEqualTo(FINE);
  }
}
