package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Quantiles follow definition 7 of Hyndman and Fan. */
class QuantileTest {
  private static final double[] VALUES = {9, 1, 4, 2, 7, 4.5};

  /** Definition 7: sorted x, position h = (n - 1) share, x[floor h] + (h - floor h) step. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({"0, 1", "0.1, 1.5", "0.25, 2.5", "0.5, 4.25", "0.95, 8.5", "1, 9"})
  void liesBetweenTheOrderStatistics(double share, double expected) {
    assertThat(Quantile.of(VALUES, share)).isCloseTo(expected, within(1e-14));
  }

  @Test
  void leavesTheValuesInTheirOrder() {
    double[] values = VALUES.clone();
    assertThat(Quantile.median(values)).isEqualTo(4.25);
    assertThat(values).containsExactly(VALUES);
  }

  @Test
  void oneValueIsEveryQuantile() {
    assertThat(Quantile.of(new double[] {3}, 0.95)).isEqualTo(3);
  }

  @Test
  void nothingAndNonsenseAreRefused() {
    assertThatThrownBy(() -> Quantile.median(new double[0])).hasMessageContaining("at least 1");
    assertThatThrownBy(() -> Quantile.of(VALUES, 1.5)).hasMessageContaining("share 1.5");
    assertThatThrownBy(() -> Quantile.median(new double[] {1, Double.NaN}))
        .hasMessage("value [1] = NaN is not finite");
  }
}
