package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The pulse test of the play operator (Krasnosel'skii and Pokrovskii 1989), values by direct
 * evaluation: play 2.0, engaged one way; pulses of 0.5.
 */
@Tag("identity")
class GearPlayTest {
  @Test
  void aReversalLosesThePlayOnce() {
    GearPlay play = new GearPlay(2, 0, 0);
    double[] moved = new double[26];
    for (int i = 0; i < moved.length; i++) {
      double push = i < 6 || i >= 18 ? 0.5 : -0.5;
      moved[i] = push - Math.copySign(play.lost(push), push);
    }

    assertThat(moved)
        .containsExactly(
            0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0, 0, 0, 0, -0.5, -0.5, -0.5, -0.5, -0.5, -0.5, -0.5,
            -0.5, 0, 0, 0, 0, 0.5, 0.5, 0.5, 0.5);
  }

  /** Unlike directions are pushes of unlike length to a motor that takes both alike. */
  @Test
  void unlikeDirectionsPushTheMotorUnlike() {
    GearPlay unlike = new GearPlay(1.2, 0.3, 0.05);
    GearPlay alike = new GearPlay(1.2, 0.3, 0);
    for (double push : new double[] {0.2, 0.4, -0.3, -0.7, -0.5, 0.9, 0.4, -0.1, 0.1, -2, 1.5}) {
      double strength = push > 0 ? 1.05 : 0.95;
      assertThat(strength * unlike.lost(push))
          .isCloseTo(alike.lost(strength * push), within(1e-12));
    }
  }
}
