package io.github.roundstar.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.FramesBuilder;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Settling ends with the first of three calm frames, or after 60 s. */
class SettlingTest {
  /** Sixty quiet frames, a dither, then offsets as given. */
  private static FramesBuilder afterDither(double cadence, double... ra) {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 60; i++) {
      frames.add(i * cadence, 0.3 + 0.1 * Math.sin(1.7 * i), 0.1 * Math.cos(2.3 * i));
    }
    frames.add(60 * cadence, 5, 5).state(FrameState.DITHER).dither(5, 5);
    for (int i = 0; i < ra.length; i++) {
      frames.add((61 + i) * cadence, 0.3 + ra[i], 0);
    }
    Settling.mark(frames);
    return frames;
  }

  private static int settling(FramesBuilder frames) {
    int count = 0;
    for (int i = 0; i < frames.size(); i++) {
      count += frames.state(i) == FrameState.SETTLING ? 1 : 0;
    }
    return count;
  }

  @Test
  void lastsUntilThreeCalmFrames() {
    FramesBuilder frames = afterDither(2, 4, 3, 2, 0.1, -0.1, 0.1, 0.1);
    assertThat(settling(frames)).isEqualTo(3);
    assertThat(frames.state(60)).isEqualTo(FrameState.DITHER);
    assertThat(frames.state(63)).isEqualTo(FrameState.SETTLING);
    assertThat(frames.state(64)).isEqualTo(FrameState.USED);
  }

  @Test
  void twoCalmFramesAreNotEnough() {
    assertThat(settling(afterDither(2, 4, 0.1, 0.1, 4, 0.1, 0.1, 0.1))).isEqualTo(4);
  }

  @Test
  void lastsAtMostSixtySeconds() {
    assertThat(settling(afterDither(2, new double[40]))).isZero();
    double[] restless = new double[50];
    Arrays.fill(restless, 4);
    assertThat(settling(afterDither(2, restless))).isEqualTo(30);
    assertThat(settling(afterDither(7, restless))).isEqualTo(8);
  }

  @Test
  void aSteadyOffsetIsNoUnrest() {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 40; i++) {
      frames.add(i, 10 + (i % 2) * 0.1, -7 + (i % 3) * 0.1);
    }
    frames.state(20, FrameState.DITHER);
    frames.add(40, 10, -7).state(FrameState.DITHER).dither(Double.NaN, Double.NaN);
    for (int i = 41; i < 50; i++) {
      frames.add(i, 10, -7);
    }
    Settling.mark(frames);
    assertThat(settling(frames)).isZero();
  }

  @Test
  void lostFramesStayLostAndBreakTheRow() {
    FramesBuilder frames = new FramesBuilder();
    frames.add(0, 5, 5).state(FrameState.DITHER).dither(1, 1);
    for (int i = 1; i < 12; i++) {
      frames.add(i, 0.1 * (i % 2), 0);
    }
    frames.state(3, FrameState.LOST);
    Settling.mark(frames);
    assertThat(frames.state(1)).isEqualTo(FrameState.SETTLING);
    assertThat(frames.state(2)).isEqualTo(FrameState.SETTLING);
    assertThat(frames.state(3)).isEqualTo(FrameState.LOST);
    assertThat(frames.state(4)).isEqualTo(FrameState.USED);
  }

  @Test
  void withoutADitherNothingIsMarked() {
    FramesBuilder frames = new FramesBuilder();
    frames.add(0, 50, 50);
    frames.add(1, 0, 0);
    Settling.mark(frames);
    assertThat(settling(frames)).isZero();
  }
}
