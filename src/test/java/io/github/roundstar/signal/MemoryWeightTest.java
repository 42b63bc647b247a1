package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against Bayes' rule summed up over a fine grid of correlations, and no memory with half. */
@Tag("identity")
class MemoryWeightTest {
  private static final double STEP = 1e-4;

  @ParameterizedTest(name = "{0} standard errors of {1}")
  @CsvSource({
    "-4, 0.02",
    "-1, 0.02",
    "0, 0.02",
    "0, 0.3",
    "1.5, 0.02",
    "2.5, 0.05",
    "8, 0.02",
    "3, 0.002"
  })
  void isThePosterior(double standardErrors, double error) {
    double none = 0.5 * density(standardErrors);
    double weights = none;
    double mean = 0;
    double square = 0;
    // A half-normal of scale 0.1, in standard errors of the estimate.
    double scale = 0.1 / error;
    for (double x = STEP * scale / 2; x < 12 * scale; x += STEP * scale) {
      double prior = 2 * density(x / scale) * STEP;
      double weight = 0.5 * prior * density(standardErrors - x);
      weights += weight;
      mean += weight * x;
      square += weight * x * x;
    }
    mean /= weights;

    MemoryWeight weighed = MemoryWeight.of(standardErrors, error);

    assertThat(weighed.mean()).isCloseTo(mean, within(1e-4));
    assertThat(weighed.deviation())
        .isCloseTo(Math.sqrt(square / weights - mean * mean), within(1e-4));
  }

  private static double density(double x) {
    return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
  }

  @Test
  void anEstimateWithoutAnErrorTellsNothing() {
    assertThat(MemoryWeight.of(0, 0)).isEqualTo(new MemoryWeight(0, 0));
  }

  @Test
  void farBelowNoneStaysFinite() {
    MemoryWeight weighed = MemoryWeight.of(-60, 0.02);

    assertThat(weighed.mean()).isBetween(0.0, 0.1);
    assertThat(weighed.deviation()).isBetween(0.0, 0.1);
  }
}
