package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Turns of an unsteady worm join without a step. */
class UnsteadyTurnsTest {
  private static final double PERIOD = 100;

  private static UnsteadyTurns turns(double phase) {
    Curve steady = Curve.sinusoid(3, PERIOD, 0.7 + phase);
    return new UnsteadyTurns(
        steady, 3 * Math.sin(0.7), PERIOD, phase, 1000, 0.5, NoiseStream.of(1, "test", 1));
  }

  @Test
  void turnsJoinWhereTheyBegin() {
    UnsteadyTurns turns = turns(2);
    for (int turn = 1; turn < 9; turn++) {
      double joint = (turn - 2 / (2 * Math.PI)) * PERIOD;
      assertThat(turns.mean(joint - 1e-3, joint)).isCloseTo(0, within(1e-3));
      assertThat(turns.mean(joint, joint + 1e-3)).isCloseTo(0, within(1e-3));
    }
  }

  @Test
  void meanOverTwoTurnsIsMadeOfBoth() {
    UnsteadyTurns turns = turns(0);
    assertThat(turns.mean(60, 130))
        .isCloseTo((40 * turns.mean(60, 100) + 30 * turns.mean(100, 130)) / 70, within(1e-12));
  }

  @Test
  void turnsDiffer() {
    UnsteadyTurns turns = turns(0);
    assertThat(turns.mean(20, 30)).isNotCloseTo(turns.mean(120, 130), within(1e-3));
  }
}
