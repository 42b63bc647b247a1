package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.FramesBuilder;
import org.junit.jupiter.api.Test;

/** When a star counts as settled is read off a log and kept to. */
class SettlingRuleTest {
  @Test
  void limitLiesBetweenTheCalmAndTheLastWildFrames() {
    FramesBuilder log = new FramesBuilder();
    double[] east = {0, 4, 2, 1.2, 0.4, 0.8, 0.3, 0.1, 0.2};
    for (int i = 0; i < east.length; i++) {
      log.add(3 * i, east[i], 0);
      if (i == 1) {
        log.dither(-4, 0).state(FrameState.DITHER);
      } else if (i > 1 && i < 7) {
        log.state(FrameState.SETTLING);
      }
    }

    assertThat(SettlingRule.of(log.build()).limitArcsec()).isCloseTo(1.0, within(1e-12));
  }

  @Test
  void withoutADitherNoLimitIsKnown() {
    assertThat(SettlingRule.of(new FramesBuilder().add(0, 1, 1).add(3, 1, 1).build()).limitArcsec())
        .isInfinite();
  }

  @Test
  void settlesAfterThreeCalmFramesOrAMinute() {
    SettlingRule.Watch watch = new SettlingRule(1).new Watch();
    boolean[] settled = new boolean[9];
    double[] offsets = {0, 3, 0.5, 2, 0.5, 0.5, 0.5, 5, 5};
    for (int i = 0; i < offsets.length; i++) {
      settled[i] = watch.settled(i == 1, 3 * i, offsets[i]);
    }
    assertThat(settled).containsExactly(true, false, false, false, false, false, false, true, true);

    assertThat(watch.settled(true, 100, 9)).isFalse();
    assertThat(watch.settled(false, 160, 9)).isFalse();
    assertThat(watch.settled(false, 163, 9)).isTrue();
  }
}
