package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A loop law answers offsets with pulses, by hand-worked examples. */
class ControllerTest {
  private static final double NONE = Double.POSITIVE_INFINITY;

  @Test
  void answersInProportionBeyondTheDeadbandUpToTheLimits() {
    Controller law = new Controller(100, 0.5, 0, 0, -150, 200);

    assertThat(pulses(law, 0.4, 0.5, -0.6, 3, -3, Double.NaN, 1))
        .containsExactly(0, 50, -60, 200, -150, 0, 100);
  }

  @Test
  void delayedLawAnswersOldOffsetsAndNoneForALostStar() {
    Controller law = new Controller(100, 0, 0, 2, -NONE, NONE);

    assertThat(pulses(law, 1, Double.NaN, 3, 4, 5)).containsExactly(0, 0, 100, 0, 300);
  }

  @Test
  void memoryFiltersAndALostStarLeavesIt() {
    Controller law = new Controller(100, 0, 0.5, 0, -NONE, NONE);

    assertThat(pulses(law, 0, 1, Double.NaN, 1)).containsExactly(0, 50, 0, 75);
  }

  /**
   * The noise-free run of a loop of gain 0.7 with a drift of 0.1 a frame from an offset of 1,
   * worked out beforehand: 1, 0.4, 0.22, 0.166, 0.1498, 0.14494, 0.143482.
   */
  @Tag("identity")
  @Test
  void loopWithADriftSettlesAtItsLag() {
    double[] expected = {1, 0.4, 0.22, 0.166, 0.1498, 0.14494, 0.143482};
    Controller.Course course = new Controller(1000, 0, 0, 0, -NONE, NONE).with(700, 0).begin();
    double offset = 1;
    for (double wanted : expected) {
      assertThat(offset).isCloseTo(wanted, within(1e-12));
      offset += 0.1 - course.next(offset) / 1000;
    }
  }

  @Test
  void lawsThatCannotBeAreRefused() {
    assertThatThrownBy(() -> new Controller(1, 0, 1, 0, 0, 0)).hasMessageContaining("memory 1.0");
    assertThatThrownBy(() -> new Controller(1, -1, 0, 0, 0, 0)).hasMessageContaining("deadband");
  }

  private static double[] pulses(Controller law, double... offsets) {
    Controller.Course course = law.begin();
    double[] pulses = new double[offsets.length];
    for (int i = 0; i < pulses.length; i++) {
      pulses[i] = course.next(offsets[i]) + 0.0;
    }
    return pulses;
  }
}
