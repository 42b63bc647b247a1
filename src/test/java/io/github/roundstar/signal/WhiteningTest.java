package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The filter whitens what follows its model, and is generalised least squares by another route. */
class WhiteningTest {
  /**
   * Gain of exponential smoothing that suits a random walk in noise, g = (-q + sqrt(q^2 + 4 q R)) /
   * (2 R): Muth (1960), J. Am. Stat. Assoc. 55, 299; the values were confirmed by Riccati iteration
   * outside this project.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "0.01, 1,    0.0951249220",
    "0.1,  1,    0.2701562119",
    "1,    1,    0.6180339887",
    "0.04, 0.09, 0.4805061467"
  })
  void gainSettlesAtTheClosedForm(double wander, double noise, double gain) {
    double[] seconds = new double[400];
    Arrays.setAll(seconds, i -> i);
    double[] impulse = new double[400];
    impulse[300] = 1;
    double[] white = Whitening.of(seconds, new boolean[400], wander / noise).apply(impulse);
    // The filter believes the impulse by its gain, and the next sample misses it by that much.
    assertThat(-white[300] / white[299]).isCloseTo(gain, within(6e-11));
  }

  @Test
  @Tag("identity")
  void whatFollowsTheModelComesOutWhiteWithTheNoisesVariance() {
    WanderingSeries series = WanderingSeries.of(11, 20_000, 0.45, 0.1);
    double[] white =
        Whitening.of(series.seconds(), new boolean[20_000], 0.01 / (0.45 * 0.45))
            .apply(series.values());
    double variance = Arrays.stream(white).map(w -> w * w).average().orElseThrow();
    // Four standard errors of a variance and of a correlation, n = 20,000.
    assertThat(variance / (0.45 * 0.45)).isCloseTo(1, within(4 * Math.sqrt(2 / 20e3)));
    for (int lag = 1; lag <= 5; lag++) {
      double product = 0;
      for (int i = lag; i < white.length; i++) {
        product += white[i] * white[i - lag];
      }
      assertThat(product / white.length / variance).isCloseTo(0, within(4 / Math.sqrt(20e3)));
    }
  }

  @ParameterizedTest(name = "memory {0} s")
  @ValueSource(doubles = {0, 0.4, 3})
  @Tag("identity")
  void logDeterminantIsThatOfTheDifferences(double memorySeconds) {
    DenseWander dense = DenseWander.example(0.3).remembering(memorySeconds);
    assertThat(dense.whitening().logDeterminant())
        .isCloseTo(dense.logDeterminantOfDifferences(), within(1e-11));
  }

  @ParameterizedTest(name = "memory {0} s")
  @ValueSource(doubles = {0, 0.4, 3})
  @Tag("identity")
  void leastSquaresOfWhiteColumnsIsGeneralisedLeastSquaresWithFreeLevels(double memorySeconds) {
    DenseWander dense = DenseWander.example(0.3).remembering(memorySeconds);
    Whitening whitening = dense.whitening();
    LinearFit fit =
        LeastSquares.on(whitening.apply(dense.regressors()))
            .orElseThrow()
            .fit(whitening.apply(dense.data()));
    RealVector expected = dense.coefficients();
    assertThat(fit.coefficient(0)).isCloseTo(expected.getEntry(0), within(1e-11));
    assertThat(fit.coefficient(1)).isCloseTo(expected.getEntry(1), within(1e-11));
    assertThat(fit.residualSquares()).isCloseTo(dense.sumOfSquares(), within(1e-10));
  }

  /** The determinant of independent steps is the product of their variances, scale^-2 each. */
  @Test
  @Tag("identity")
  void logDeterminantOfHugeAndManyVariancesIsTheirSum() {
    double[] seconds = new double[500];
    Arrays.setAll(seconds, i -> i + 0.3 * Math.sin(i));
    for (double ratio : new double[] {0.01, 1e5}) {
      Whitening whitening = Whitening.of(seconds, new boolean[500], ratio);
      double sum = 0;
      for (int sample : whitening.stepSamples()) {
        sum -= 2 * Math.log(whitening.scale(sample));
      }
      assertThat(whitening.logDeterminant()).isCloseTo(sum, within(1e-9 * sum));
    }
  }

  @ParameterizedTest(name = "memory {0} s")
  @ValueSource(doubles = {0, 3})
  @Tag("identity")
  void manyColumnsComeOutAsEachAlone(double memorySeconds) {
    DenseWander dense = DenseWander.example(0.3).remembering(memorySeconds);
    Whitening whitening = dense.whitening();
    for (int count = 0; count <= 9; count++) {
      double[][] columns = new double[count][];
      for (int j = 0; j < count; j++) {
        double pace = 1 + j;
        columns[j] = Arrays.stream(dense.seconds()).map(t -> Math.cos(t / pace) + pace).toArray();
      }
      double[][] white = whitening.apply(columns);
      assertThat(white).hasDimensions(count, count == 0 ? 0 : whitening.size());
      for (int j = 0; j < count; j++) {
        assertThat(white[j]).containsExactly(whitening.apply(columns[j]));
      }
    }
  }

  @Test
  void firstSampleOfAPieceYieldsNoStep() {
    double[] seconds = {0, 1, 2, 3, 4, 5};
    boolean[] starts = {false, false, true, true, false, false};
    Whitening whitening = Whitening.of(seconds, starts, 0.2);
    assertThat(whitening.size()).isEqualTo(3);
    assertThat(whitening.stepSamples()).containsExactly(1, 4, 5);
    assertThat(whitening.apply(new double[] {7, 7, -40, 3, 3, 3})).containsExactly(0, 0, 0);
  }

  /** Noise falls by e in its memory; the steps stand 2 s apart. */
  @Test
  void remembersOnlyWhatLasts() {
    double[] seconds = {0, 2, 4};
    assertThat(Whitening.of(seconds, new boolean[3], 0.2).remembers()).isFalse();
    assertThat(Whitening.of(seconds, new boolean[3], 0.2, 3).remembers()).isTrue();
    assertThat(Whitening.of(seconds, new boolean[] {true, true, true}, 0.2, 3).remembers())
        .isFalse();
    assertThat(Whitening.remembered(2, 0)).isZero();
    assertThat(Whitening.remembered(2, 4)).isCloseTo(Math.exp(-0.5), within(1e-15));
  }

  @Test
  void isWhatTheFittedModelFiltersWith() {
    DenseWander dense = DenseWander.example(0.3);
    Whitening whitening = new WanderNoise(7, 0.3).whitening(dense.seconds(), dense.starts());
    assertThat(whitening.apply(dense.data()))
        .containsExactly(dense.whitening().apply(dense.data()));
    assertThat(whitening.samples()).isEqualTo(40);
  }

  @Test
  void isLinear() {
    DenseWander dense = DenseWander.example(0.3);
    Whitening whitening = dense.whitening();
    double[] one = dense.data();
    double[] other = dense.regressors()[1];
    double[] mixed = new double[one.length];
    Arrays.setAll(mixed, i -> 3 * one[i] - 0.5 * other[i]);
    double[] white = whitening.apply(mixed);
    for (int i = 0; i < white.length; i++) {
      assertThat(white[i])
          .isCloseTo(3 * whitening.apply(one)[i] - 0.5 * whitening.apply(other)[i], within(1e-12));
    }
  }

  @Test
  void withoutWanderTheStepsAreRecursiveResiduals() {
    double[] white =
        Whitening.of(new double[] {0, 1, 2, 3}, new boolean[4], 0).apply(new double[] {1, 3, 8, 0});
    // Each sample against the mean of those before it, over sqrt(1 + 1 / number before it).
    assertThat(white[0]).isCloseTo(2 / Math.sqrt(2), within(1e-14));
    assertThat(white[1]).isCloseTo(6 / Math.sqrt(1.5), within(1e-14));
    assertThat(white[2]).isCloseTo(-4 / Math.sqrt(4.0 / 3), within(1e-14));
  }

  @Test
  void argumentsAreLeftAlone() {
    boolean[] starts = new boolean[3];
    double[] column = {1, 2, 4};
    Whitening.of(new double[] {0, 1, 2}, starts, 0.1).apply(column);
    assertThat(starts).containsExactly(false, false, false);
    assertThat(column).containsExactly(1, 2, 4);
  }

  /** A seeded walk in noise at steps of about a second. */
  record WanderingSeries(double[] seconds, double[] values) {
    static WanderingSeries of(long seed, int size, double noise, double wander) {
      Random random = new Random(seed);
      double[] seconds = new double[size];
      double[] values = new double[size];
      double walk = 0;
      for (int i = 0; i < size; i++) {
        seconds[i] = i + 0.4 * random.nextDouble();
        double step = i == 0 ? 0 : seconds[i] - seconds[i - 1];
        walk += wander * Math.sqrt(step) * random.nextGaussian();
        values[i] = walk + noise * random.nextGaussian();
      }
      return new WanderingSeries(seconds, values);
    }
  }
}
