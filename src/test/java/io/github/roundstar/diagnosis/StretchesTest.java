package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.Stretches.Stretch;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A chart draws no line through a time in which the star was not measured. */
class StretchesTest {
  @Test
  void timeWithoutFramesCuts() {
    double[] seconds = {0, 3, 6, 37, 40, 43, 46};

    assertThat(Stretches.of(seconds, 3, 46))
        .containsExactly(new Stretch(0, 3, 6), new Stretch(3, 7, 9));
  }

  @Test
  void thirtySecondsAreNoGapYet() {
    assertThat(Stretches.of(new double[] {0, 30, 60}, 3, 10))
        .containsExactly(new Stretch(0, 3, 10));
  }

  @Test
  void longExposuresAreNoGaps() {
    assertThat(Stretches.of(new double[] {0, 60, 120, 400}, 60, 10))
        .containsExactly(new Stretch(0, 3, 3), new Stretch(3, 4, 1));
  }

  @Test
  void emptySeriesHasNoStretch() {
    assertThat(Stretches.of(new double[0], 3, 10)).isEmpty();
    assertThat(Stretches.joined(List.of())).isEmpty();
  }

  @Test
  void partsAreJoinedByNaN() {
    assertThat(Stretches.joined(List.of(new double[] {1, 2}, new double[] {3})))
        .containsExactly(1, 2, Double.NaN, 3);
  }
}
