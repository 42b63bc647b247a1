package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Settling lasts from the first frame against the new set point to the first used one. */
class SettlingTimesTest {
  /** U used, S settling, L lost, D dither, d a dither on a lost frame; a frame every 3 s. */
  private static Frames frames(String states) {
    FramesBuilder builder = new FramesBuilder();
    for (int i = 0; i < states.length(); i++) {
      builder.add(3 * i, 0, 0);
      switch (states.charAt(i)) {
        case 'U' -> builder.state(FrameState.USED);
        case 'S' -> builder.state(FrameState.SETTLING);
        case 'L' -> builder.state(FrameState.LOST);
        case 'd' -> builder.state(FrameState.LOST).dither(1, 1);
        default -> builder.state(FrameState.DITHER).dither(1, 1);
      }
    }
    return builder.build();
  }

  private static List<Double> seconds(String... runs) {
    return SettlingTimes.seconds(
        List.of(runs).stream().map(run -> Runs.NOTHING_KNOWN.of(frames(run))).toList());
  }

  @Test
  void isCountedFromTheDither() {
    assertThat(seconds("UUDSSUUUDUU")).containsExactly(9.0, 3.0);
  }

  @Test
  void ditherOnALostFrameCountsToo() {
    assertThat(seconds("UUdLSUU")).containsExactly(9.0);
  }

  @Test
  void ditherBeforeTheStarRestedStartsAnew() {
    assertThat(seconds("UDSSDSU")).containsExactly(6.0);
  }

  @Test
  void runThatEndsWhileSettlingDoesNotReachIntoTheNext() {
    assertThat(seconds("UDSS", "UUDSU")).containsExactly(6.0);
  }

  @Test
  void withoutDitherThereIsNone() {
    assertThat(seconds("UUSSUU", "")).isEmpty();
  }
}
