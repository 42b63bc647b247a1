package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A gear pair with play loses exactly its play at each reversal. */
class PlayTest {
  /** Direct evaluation of the play operator in Python, half width 1.5. */
  @Test
  @Tag("published")
  void drivenSideFollowsTheFlanks() {
    double[] driver = {0, 1, 2, 3, 4, 3, 2, 1, 0, -1, -2, 0, 2, 5};
    double[] driven = {0, 0, 0.5, 1.5, 2.5, 2.5, 2.5, 2.5, 1.5, 0.5, -0.5, -0.5, 0.5, 3.5};
    Play play = new Play(3, 0);

    for (int i = 0; i < driver.length; i++) {
      assertThat(play.follow(driver[i])).as("step %d", i).isEqualTo(driven[i]);
    }
  }

  @Test
  void negativePlayIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Play(-1, 0));
  }
}
