package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Exposure averages of the random processes have the moments of theory. */
@Tag("identity")
class RelaxationTest {
  private static final int N = 100_000;

  /**
   * Variance and lag-1 covariance of averages over T of a process with covariance v exp(-|t|/c):
   * the double integrals over the covariance.
   */
  @ParameterizedTest(name = "time constant {0} s, exposure {1} s, gap {2} s")
  @CsvSource({"0.1, 2, 1", "1.5, 2, 1", "20, 2, 1", "3, 1, 0"})
  void averagesHaveTheIntegratedCovariance(double constant, double exposure, double gap) {
    double v = 0.7;
    double kept = Math.exp(-exposure / constant);
    double variance = 2 * v * constant / exposure * (1 - constant / exposure * (1 - kept));
    double covariance =
        v * Math.pow(constant / exposure * (1 - kept), 2) * Math.exp(-gap / constant);
    Relaxation process = new Relaxation(v, constant, NoiseStream.of(7, "test", 1));
    double squares = 0;
    double products = 0;
    double last = 0;
    for (int i = 0; i < N; i++) {
      double mean = process.mean(exposure);
      squares += mean * mean;
      products += i == 0 ? 0 : mean * last;
      last = mean;
      process.skip(gap);
    }
    double correlated = Math.max(1, 2 * constant / (exposure + gap));
    double spread = 4 * variance * Math.sqrt(2 * correlated / N);

    assertThat(squares / N).isCloseTo(variance, within(spread));
    assertThat(products / (N - 1)).isCloseTo(covariance, within(spread));
  }

  /** A mean over the first T of a random walk has variance q T / 3, its end q T, both q T / 2. */
  @Test
  void randomWalkIsAveragedExactly() {
    NoiseStream noise = NoiseStream.of(8, "test", 1);
    double ends = 0;
    double means = 0;
    double both = 0;
    for (int i = 0; i < N; i++) {
      Wander wander = new Wander(noise, 0.5);
      double mean = wander.mean(4);
      double end = wander.mean(0);
      means += mean * mean;
      ends += end * end;
      both += mean * end;
    }

    assertThat(ends / N).isCloseTo(1, within(4 * Math.sqrt(2.0 / N)));
    assertThat(means / N).isCloseTo(1.0 / 3, within(4 * Math.sqrt(2.0 / N) / 3));
    assertThat(both / N).isCloseTo(0.5, within(4 * Math.sqrt(2.0 / N)));
  }
}
