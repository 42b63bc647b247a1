package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every score is that of the pattern as a regressor of its own. */
@Tag("identity")
class ShiftScoresTest {
  private static final DenseWander SERIES = DenseWander.example(0.3);

  @ParameterizedTest(name = "{0} frames")
  @CsvSource({"1", "2", "5", "12"})
  void scoresAreThoseOfOneMoreRegressor(int length) {
    Whitening whitening = SERIES.whitening();
    double[] white = whitening.apply(SERIES.data());
    ShiftScores scores = ShiftScores.of(whitening, white);
    int n = SERIES.data().length;
    for (int i = 0; i + length <= n; i++) {
      double[] passing = new double[n];
      double[] lasting = new double[n];
      for (int k = i; k < n; k++) {
        passing[k] = k < i + length ? 1 : 0;
        lasting[k] = Math.min(1, (k - i + 1.0) / length);
      }
      agrees(scores.passing(i, length), whitening.apply(passing), white);
      agrees(scores.lasting(i, length), whitening.apply(lasting), white);
    }
  }

  private static void agrees(ShiftScores.Shift shift, double[] pattern, double[] white) {
    double information = LeastSquares.dot(pattern, pattern);
    double score = LeastSquares.dot(pattern, white);
    assertThat(shift.information()).isCloseTo(information, within(1e-11));
    assertThat(shift.score()).isCloseTo(score, within(1e-11));
    if (information > 1e-6) {
      assertThat(shift.size()).isCloseTo(score / information, within(1e-9));
      assertThat(shift.normed()).isCloseTo(score / Math.sqrt(information), within(1e-9));
    }
  }

  @Test
  void stepAtTheStartOfAPieceCannotBeTold() {
    ShiftScores scores =
        ShiftScores.of(SERIES.whitening(), SERIES.whitening().apply(SERIES.data()));
    assertThat(scores.lasting(13, 1)).isEqualTo(new ShiftScores.Shift(0, 0));
    assertThat(scores.lasting(13, 1).normed()).isZero();
    assertThat(scores.lasting(13, 1).size()).isZero();
  }
}
