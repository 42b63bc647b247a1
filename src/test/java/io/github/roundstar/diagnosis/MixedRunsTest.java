package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideCamera;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.LoopSettings;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.Note;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;

/** Ten minutes without a pulse are a recording of the mount by itself, and a run of their own. */
class MixedRunsTest {
  private static Night night(int size, IntPredicate pushed, IntPredicate lost) {
    FramesBuilder builder = new FramesBuilder();
    for (int i = 0; i < size; i++) {
      builder.add(3.0 * i, lost.test(i) ? Double.NaN : 0.1, lost.test(i) ? Double.NaN : 0);
      builder.pulses(pushed.test(i) ? 20 : 0, 0);
      builder.state(lost.test(i) ? FrameState.LOST : FrameState.USED);
    }
    Frames frames = builder.build();
    Pointing pointing =
        new Pointing(
            OptionalDouble.of(20),
            OptionalDouble.of(11.9),
            Optional.empty(),
            OptionalDouble.empty());
    GuideRun run =
        new GuideRun(
            1,
            Optional.empty(),
            pointing,
            new GuideCamera(OptionalDouble.empty(), OptionalDouble.empty()),
            LoopSettings.UNKNOWN,
            frames,
            RowCounts.of(frames, 2, 3),
            List.of(new Note(1200, "cable"), new Note(3100, "end")));
    return new Night("n", List.of(run), List.of());
  }

  @Test
  void stretchIsARunOfItsOwn() {
    Night split = MixedRuns.split(night(1000, i -> i < 300 || i >= 600, i -> false));
    assertThat(split.runs()).extracting(GuideRun::id).containsExactly(1, 2, 3);
    assertThat(split.runs())
        .extracting(GuideRun::mode)
        .containsExactly(GuidingMode.GUIDED, GuidingMode.UNGUIDED, GuidingMode.GUIDED);
    assertThat(split.runs()).extracting(run -> run.frames().size()).containsExactly(301, 299, 400);
    RowCounts sum =
        split.runs().stream().map(GuideRun::counts).reduce(RowCounts.NONE, RowCounts::plus);
    assertThat(sum).isEqualTo(night(1000, i -> true, i -> false).runs().get(0).counts());
    assertThat(split.runs()).extracting(run -> run.notes().size()).containsExactly(0, 1, 1);
  }

  /**
   * 903 s of the sky's turn are a quarter of an hour and 2.5 s, and go beyond the lower meridian.
   */
  @Test
  void hourAngleGoesOnWithTheSky() {
    Night split = MixedRuns.split(night(1000, i -> i < 300 || i >= 600, i -> false));
    double later = 11.9 + 903 * 1.0027379 / 3600;
    assertThat(split.runs().get(1).pointing().hourAngleHours().orElseThrow())
        .isCloseTo(later - 24, within(1e-4));
  }

  @Test
  void shorterStretchAndLostStarStayPartOfTheGuiding() {
    assertThat(MixedRuns.split(night(1000, i -> i < 300 || i >= 490, i -> false)).runs())
        .hasSize(1);
    assertThat(
            MixedRuns.split(night(1000, i -> i < 300 || i >= 600, i -> i > 310 && i < 590)).runs())
        .hasSize(1);
  }

  @Test
  void runWithoutAnyPulseIsLeftAsItIs() {
    assertThat(MixedRuns.split(night(1000, i -> false, i -> false)).runs()).hasSize(1);
  }

  @Test
  void stretchAtEitherEndIsSetApart() {
    assertThat(MixedRuns.split(night(1000, i -> i >= 400, i -> false)).runs())
        .extracting(GuideRun::mode)
        .containsExactly(GuidingMode.UNGUIDED, GuidingMode.GUIDED);
    assertThat(MixedRuns.split(night(1000, i -> i < 400, i -> false)).runs())
        .extracting(GuideRun::mode)
        .containsExactly(GuidingMode.GUIDED, GuidingMode.UNGUIDED);
  }
}
