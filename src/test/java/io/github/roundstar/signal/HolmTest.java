package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Many tests at once. */
class HolmTest {
  /** By hand: 0.01 x 4, then 0.02 x 3, then 0.03 x 2 raised to the one before, then 0.04 x 1. */
  @Test
  void eachProbabilityIsRaisedByHowManyAreLeft() {
    double[] adjusted = Holm.adjusted(new double[] {0.04, 0.01, 0.03, 0.02});
    assertThat(adjusted)
        .containsExactly(
            new double[] {0.06, 0.04, 0.06, 0.06}, org.assertj.core.data.Offset.offset(1e-12));
  }

  @Test
  void aloneNothingIsRaisedAndNothingPassesOne() {
    assertThat(Holm.adjusted(new double[] {0.03})).containsExactly(0.03);
    assertThat(Holm.adjusted(new double[] {0.7, 0.9})).containsExactly(1, 1);
    assertThat(Holm.adjusted(new double[0])).isEmpty();
  }
}
