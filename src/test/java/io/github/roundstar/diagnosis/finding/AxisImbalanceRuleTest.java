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
import org.junit.jupiter.api.Test;

/** Pulses that act more one way. */
class AxisImbalanceRuleTest {
  private static final AxisImbalanceRule RULE = new AxisImbalanceRule();

  @Test
  void halfTheDifferenceDecides() {
    assertThat(sound().eastWest(about(1.3, 0.03), about(0.7, 0.03)).levelBy(RULE))
        .isEqualTo(FIX_FIRST);
    assertThat(sound().eastWest(about(1.14, 0.03), about(0.86, 0.03)).levelBy(RULE))
        .isEqualTo(WORTH_FIXING);
    assertThat(sound().eastWest(about(1.11, 0.03), about(0.89, 0.03)).levelBy(RULE))
        .isEqualTo(WATCH);
    assertThat(sound().eastWest(about(1.03, 0.03), about(0.97, 0.03)).levelBy(RULE))
        .isEqualTo(FINE);
  }

  @Test
  void weakerSideIsNamed() {
    assertThat(sound().eastWest(about(0.7, 0.03), about(1.3, 0.03)).judgedBy(RULE).title())
        .isEqualTo("Pulses act 60 % more to the west than east");
  }

  @Test
  void differenceInDecBesideAPlayThatMattersIsThePlays() {
    MadeUpNight unlike = sound().northSouth(about(1.3, 0.03), about(0.7, 0.03));

    assertThat(unlike.levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(unlike.play(about(8, 0.2)).part(Axis.DEC, "backlash", 1).levelBy(RULE))
        .isEqualTo(FINE);
  }

  @Test
  void cannotTellWithoutResponse() {
    assertThat(sound().withoutResponse("no pulses").levelBy(RULE)).isEqualTo(CANNOT_TELL);
    assertThat(sound().eastWest(about(1, 0.5), about(1, 0.5)).levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }
}
