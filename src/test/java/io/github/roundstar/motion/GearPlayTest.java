package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The pulse test of the play operator (Krasnosel'skii and Pokrovskii 1989), values by direct
 * evaluation: play 2.0, engaged one way; pulses of 0.5.
 */
@Tag("published")
class GearPlayTest {
  @Test
  void aReversalLosesThePlayOnce() {
    GearPlay play = new GearPlay(2, 0);
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
}
