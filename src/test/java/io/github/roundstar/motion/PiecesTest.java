package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A level is lost where nobody can say how far it moved, and only there. */
class PiecesTest {
  @Test
  void gapOverHalfAMinuteLosesTheLevel() {
    assertThat(starts(at(0, 3, 6, 36, 66.1, 69)))
        .containsExactly(true, false, false, false, true, false);
  }

  @Test
  void slowFramesAreNoGaps() {
    assertThat(starts(at(0, 30, 60, 90, 120, 150, 180)))
        .containsExactly(true, false, false, false, false, false, false);
    assertThat(starts(at(0, 40, 80, 160, 200, 321, 361)))
        .containsExactly(true, false, false, false, false, true, false);
  }

  @Test
  void starMissedTwiceIsTheSameStar() {
    FramesBuilder builder = new FramesBuilder().add(0, 0, 0);
    lost(builder, 3);
    lost(builder, 6);
    builder.add(9, 0, 0);
    assertThat(starts(builder.build())).containsExactly(true, false);
  }

  @Test
  void starLostForThreeFramesMayBeAnother() {
    FramesBuilder builder = new FramesBuilder().add(0, 0, 0);
    lost(builder, 3);
    lost(builder, 6);
    lost(builder, 9);
    builder.add(12, 0, 0).add(15, 0, 0);
    assertThat(starts(builder.build())).containsExactly(true, true, false);
  }

  @Test
  void ditherOfKnownShiftKeepsTheLevel() {
    Frames frames =
        new FramesBuilder().add(0, 0, 0).add(3, 0, 0).dither(2, -1).add(6, 0, 0).build();
    assertThat(starts(frames)).containsExactly(true, false, false);
  }

  @Test
  void ditherOfUnknownShiftLosesTheLevel() {
    Frames frames =
        new FramesBuilder()
            .add(0, 0, 0)
            .add(3, 0, 0)
            .dither(Double.NaN, Double.NaN)
            .add(6, 0, 0)
            .build();
    assertThat(starts(frames)).containsExactly(true, true, false);
  }

  @Test
  void unknownDitherOnALostFrameCountsAtTheNextMeasuredOne() {
    FramesBuilder builder = new FramesBuilder().add(0, 0, 0);
    lost(builder, 3);
    builder.dither(Double.NaN, Double.NaN).add(6, 0, 0);
    assertThat(starts(builder.build())).containsExactly(true, true);
  }

  private static void lost(FramesBuilder builder, double seconds) {
    builder.add(seconds, Double.NaN, Double.NaN).state(FrameState.LOST);
  }

  private static Frames at(double... seconds) {
    FramesBuilder builder = new FramesBuilder();
    for (double time : seconds) {
      builder.add(time, 0, 0);
    }
    return builder.build();
  }

  private static boolean[] starts(Frames frames) {
    return Pieces.starts(
        frames, IntStream.range(0, frames.size()).filter(frames::measured).toArray());
  }
}
