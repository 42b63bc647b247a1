package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A fit needs enough white steps, which are fewer than the frames. */
class RunBackgroundTest {
  @Test
  void stepsCountAndNotFrames() {
    AxisRun whole = PlainNights.USUAL.frames(40).run(1, 1);
    boolean[] everySecond = new boolean[40];
    for (int i = 0; i < 40; i += 2) {
      everySecond[i] = true;
    }
    AxisRun torn =
        PlainNights.USUAL.run(1, whole.motion().seconds(), whole.motion().arcsec(), everySecond);
    assertThat(RunBackground.of(whole, List.of())).isPresent();
    // 20 steps carry the drift, but not six columns more.
    Family three = Family.ofPeriod(40, 1, Family.UNLABELLED).withHarmonic(2).withHarmonic(3);
    assertThat(RunBackground.of(torn, List.of())).isPresent();
    assertThat(RunBackground.of(torn, List.of(three))).isEmpty();
  }

  @Test
  void timesAreThoseOfTheStepsSinceTheOrigin() {
    AxisRun run = PlainNights.USUAL.frames(60).run(1, 1);
    double[] steps = RunBackground.of(run, List.of()).orElseThrow().stepSeconds();
    double[] seconds = run.phaseSeconds();
    assertThat(steps).containsExactly(Arrays.copyOfRange(seconds, 1, 60));
  }
}
