package io.github.roundstar.diagnosis.finding;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Decimals;
import io.github.roundstar.model.Estimate;
import org.junit.jupiter.api.Test;

/** Sentences of findings write numbers as every page does. */
class WordingTest {
  @Test
  void decimalsFollowTheIntervalAsOnEveryPage() {
    for (double half : new double[] {0.004, 0.02, 0.3, 4, 50}) {
      for (double value : new double[] {0.013, 0.48, 7.36, 123.4}) {
        Estimate estimate = Estimate.symmetric(value, half);
        assertThat(Wording.both(estimate)).isEqualTo(Decimals.text(estimate));
      }
      assertThat(Wording.number(half)).isEqualTo(Decimals.text(half));
    }
  }

  @Test
  void aSmallFigureIsNotWrittenAsZero() {
    assertThat(Wording.both(new Estimate(0.023, 0.018, 0.028))).isEqualTo("0.023 (0.018 .. 0.028)");
    assertThat(Wording.number(0.004)).isEqualTo("0.0040");
  }

  @Test
  void sharesAreWholePercentsAndNeverANegativeZero() {
    assertThat(Wording.percent(new Estimate(0.001, -0.004, 0.2))).isEqualTo("0 % (0 .. 20)");
    assertThat(Wording.percent(-0.001)).isEqualTo("0 %");
  }
}
