package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lag-1 autocorrelation agrees with the NIST Statistical Reference Datasets, univariate. */
class AutocorrelationTest {
  /** Numerical Accuracy 2 to 4: one central value, then 500 pairs a tenth below and above it. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "1.2, 1.1, 1.3, 1e-14",
    "1000000.2, 1000000.1, 1000000.3, 1e-9",
    "10000000.2, 10000000.1, 10000000.3, 1e-8"
  })
  void largeMeansCostFewDigits(double mean, double below, double above, double tolerance) {
    double[] values = new double[1001];
    values[0] = mean;
    for (int i = 1; i < 1001; i++) {
      values[i] = i % 2 == 1 ? below : above;
    }
    assertThat(Autocorrelation.lag1(values)).isCloseTo(-0.999, within(tolerance));
  }

  @Test
  @Tag("published")
  void beamDeflectionsAreReproduced() {
    assertThat(Autocorrelation.lag1(NumberFile.read("nist-lew.csv")))
        .isCloseTo(-0.307304800605679, within(1e-14));
  }

  @Test
  void steadyValuesHaveNone() {
    assertThat(Autocorrelation.lag1(new double[] {2, 2, 2})).isZero();
    assertThat(Autocorrelation.lag1(new double[] {2})).isZero();
    assertThatThrownBy(() -> Autocorrelation.lag1(new double[0])).hasMessageContaining("least 1");
  }
}
