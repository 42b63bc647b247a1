package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How long blocks must be. */
class BlockLengthTest {
  /**
   * Politis and White (2004) with the correction of 2009, worked out in numpy on the portable
   * first-order autoregressive series.
   */
  @Tag("identity")
  @Test
  void agreesWithTheRecipe() {
    double[] series = KnownSeries.autoregression();
    assertThat(BlockLength.optimal(series)).isCloseTo(9.0308178828, within(1e-8));
    assertThat(BlockLength.of(series)).isEqualTo(10);
  }

  /** The same recipe in NumPy 2.4.6: memory that is short, long, alternating, or never ends. */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # coefficient, n, optimal, rounded up
          0.9,  200,  21.5617032868, 22
          -0.5, 200,  3.8454250986,  4
          0.3,  1000, 5.7852640474,  6
          0.6,  40,   4.1609029029,  5
          1,    400,  51.4736413150, 52
          0.9,  20,   1.6178543156,  2
          0.8,  12,   0.4152386535,  1
          """)
  void lengthSuitsTheMemory(double coefficient, int n, double optimal, int length) {
    double[] series = KnownSeries.unitNoise(n);
    for (int i = 1; i < n; i++) {
      series[i] += coefficient * series[i - 1];
    }
    assertThat(BlockLength.optimal(series)).isCloseTo(optimal, within(1e-8));
    assertThat(BlockLength.of(series)).isEqualTo(length);
  }

  /** A sinusoid never forgets, sin(i / 3): three roots of 200, a third of 60; optima by NumPy. */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource({"200, 106.59856504, 43", "60, 26.51069544, 20"})
  void lengthIsBounded(int n, double optimal, int length) {
    double[] series = new double[n];
    Arrays.setAll(series, i -> Math.sin(i / 3.0));
    assertThat(BlockLength.optimal(series)).isCloseTo(optimal, within(1e-7));
    assertThat(BlockLength.of(series)).isEqualTo(length);
  }

  @Test
  void noMemoryNeedsOnlyShortBlocks() {
    assertThat(BlockLength.of(KnownSeries.unitNoise(1000))).isLessThan(6);
  }

  @Test
  void valuesThatDoNotVaryAndShortSeriesHaveALengthToo() {
    assertThat(BlockLength.of(new double[50])).isEqualTo(1);
    assertThat(BlockLength.optimal(new double[50])).isEqualTo(1);
    assertThat(BlockLength.of(new double[] {1})).isEqualTo(1);
    assertThat(BlockLength.of(new double[] {1, 2, 3, 4})).isEqualTo(1);
  }
}
