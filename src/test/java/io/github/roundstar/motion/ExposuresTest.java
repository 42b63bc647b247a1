package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.FramesBuilder;
import org.junit.jupiter.api.Test;

/** Used frames are cut into exposures, and what is constant over each trails nothing. */
class ExposuresTest {
  /** Ten frames a second apart; the set point moves at the sixth, whose frame is not used. */
  private static Exposures cut(double seconds) {
    FramesBuilder log = new FramesBuilder();
    for (int i = 0; i < 10; i++) {
      log.add(i, 0, 0).pulses(0, 0);
      if (i == 5) {
        log.dither(1, 1).state(FrameState.DITHER);
      }
    }
    return Exposures.of(new GuidedFrames(Runs.NOTHING_KNOWN.of(log.build()), Axis.RA), seconds);
  }

  @Test
  void onlyUsedFramesCount() {
    Exposures exposures = cut(100);

    assertThat(exposures.frames()).isEqualTo(9);
    assertThat(exposures.mean(new double[] {1, 1, 1, 1, 1, 900, 1, 1, 1, 10})).isEqualTo(2);
  }

  @Test
  void anExposureNeverSpansADither() {
    double[] steps = {1, 1, 1, 1, 1, 0, 7, 7, 7, 7};

    assertThat(cut(100).trailing(steps, steps)).isCloseTo(0, within(1e-12));
  }

  @Test
  void exposuresFollowOneAnother() {
    double[] steps = {2, 2, 5, 5, 8, 0, 1, 1, 4, 4};

    assertThat(cut(2).trailing(steps, steps)).isCloseTo(0, within(1e-12));
    assertThat(cut(100).trailing(steps, steps)).isGreaterThan(1);
  }
}
