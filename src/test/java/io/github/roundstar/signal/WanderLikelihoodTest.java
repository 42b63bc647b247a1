package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The likelihood by the filter is the dense one, and its peak is found and told as wide as it is.
 */
class WanderLikelihoodTest {
  private static final double[][] NO_REGRESSORS = {};

  /** Wander over noise is 0.15^2 / 0.45^2 per second, so the peak is near a ratio of 0.1. */
  private static final WhiteningTest.WanderingSeries SERIES =
      WhiteningTest.WanderingSeries.of(5, 150, 0.45, 0.15);

  private static final double[][] SLOPE = {SERIES.seconds()};

  /** Both leave out constants, and each its own: only differences can agree. */
  @ParameterizedTest(name = "ratio {0} /s, memory {1} s")
  @Tag("identity")
  @CsvSource({"1e-6, 0", "1e-3, 0.7", "0.03, 3", "0.3, 9", "4, 1.5", "1e3, 3"})
  void isTheDenseOneWithAnyRatioAndMemory(double ratio, double memorySeconds) {
    DenseWander reference = DenseWander.example(0.1);
    DenseWander dense = reference.withRatio(ratio).remembering(memorySeconds);
    assertThat(of(dense, memorySeconds).at(Math.log10(ratio)) - of(reference, 0).at(-1))
        .isCloseTo(
            dense.restrictedLogLikelihood() - reference.restrictedLogLikelihood(), within(1e-8));
  }

  @ParameterizedTest(name = "memory {0} s")
  @Tag("identity")
  @ValueSource(doubles = {0, 3})
  void modelHasTheNoiseOfGeneralisedLeastSquares(double memorySeconds) {
    DenseWander dense = DenseWander.example(0.02).remembering(memorySeconds);
    WanderNoise model = of(dense, memorySeconds).model(Math.log10(0.02));
    assertThat(model.ratioPerSecond()).isCloseTo(0.02, within(1e-15));
    assertThat(model.memorySeconds()).isEqualTo(memorySeconds);
    assertThat(model.noiseVariance())
        .isCloseTo(dense.sumOfSquares() / dense.degreesOfFreedom(), within(1e-10));
  }

  @ParameterizedTest(name = "from {0}")
  @ValueSource(doubles = {-9, -4, -2, -0.9, 0.5, 2, 5})
  void peakIsFoundFromAnywhere(double start) {
    WanderLikelihood likelihood = wandering(0);
    double peak = likelihood.highest(-1);
    assertThat(likelihood.at(peak))
        .isGreaterThan(likelihood.at(peak - 0.01))
        .isGreaterThan(likelihood.at(peak + 0.01));
    assertThat(likelihood.highest(start)).isCloseTo(peak, within(2e-6));
  }

  @ParameterizedTest(name = "from {0}")
  @ValueSource(doubles = {-9, 3})
  void peakBesideNoiseWithAMemoryIsFoundFromFarAway(double start) {
    WanderLikelihood likelihood = wandering(1.2);
    assertThat(likelihood.highest(start)).isCloseTo(likelihood.highest(-1), within(2e-6));
  }

  /** So far above the noise that the likelihood rises almost straight, and steps grow long. */
  @ParameterizedTest(name = "wander of {0}, from {1}")
  @CsvSource({"1, -9", "2, -9", "4, -9", "1, -6", "2, -6", "4, -6", "8, -9.5", "8, 5.5"})
  void noLeapPassesOverThePeak(double wander, double start) {
    WhiteningTest.WanderingSeries series = WhiteningTest.WanderingSeries.of(3, 20_000, 0.7, wander);
    WanderLikelihood likelihood =
        new WanderLikelihood(
            series.seconds(), new boolean[20_000], series.values(), NO_REGRESSORS, 0);
    double highest = likelihood.at(likelihood.highest(start));
    for (double ratio = -9; ratio <= 5; ratio += 0.5) {
      assertThat(likelihood.at(ratio)).isLessThanOrEqualTo(highest);
    }
  }

  /** Steps that resemble each other are no noise: the larger the ratio, the better. */
  @ParameterizedTest(name = "from {0}")
  @ValueSource(doubles = {-9, 0, 4.97, 5})
  void searchEndsAtTheBoundWhereAllIsWander(double start) {
    double[] walk = KnownSeries.unitNoise(200);
    Arrays.parallelPrefix(walk, Double::sum);
    Arrays.parallelPrefix(walk, Double::sum);
    assertThat(everySecond(walk).highest(start)).isEqualTo(WanderNoise.HIGHEST_LOG_RATIO);
  }

  /** Steps that undo each other are no wander. */
  @ParameterizedTest(name = "from {0}")
  @ValueSource(doubles = {-9, -8.97, 0, 5})
  void searchEndsAtTheBoundWhereNothingWanders(double start) {
    double[] toAndFro = new double[200];
    Arrays.setAll(toAndFro, i -> i % 2 == 0 ? 1 : -1);
    assertThat(everySecond(toAndFro).highest(start)).isEqualTo(WanderNoise.LOWEST_LOG_RATIO);
  }

  private static WanderLikelihood everySecond(double[] data) {
    double[] seconds = new double[data.length];
    Arrays.setAll(seconds, i -> i);
    return new WanderLikelihood(seconds, new boolean[data.length], data, NO_REGRESSORS, 0);
  }

  /** Two steps more than regressors at least, and more than the rounding of the data themselves. */
  @Test
  void saysSomethingOnlyWhereStepsAreLeftOverAndDifferByMoreThanRounding() {
    assertThat(line(3, 0, 1).informative(-3)).isTrue();
    assertThat(line(2, 0, 1).informative(-3)).isFalse();
    // Squared: 1e-26 and 1e-22 of the largest value, either side of the limit of 1e-24.
    assertThat(line(50, -1000, 1e-10).informative(-3)).isFalse();
    assertThat(line(50, -1000, 1e-8).informative(-3)).isTrue();
    assertThat(line(50, 1000, 1e-8).informative(-3)).isTrue();
    assertThat(line(50, 0, 0).informative(-3)).isFalse();
  }

  /** A level with a spread about it. */
  private static WanderLikelihood line(int size, double level, double spread) {
    double[] data = new double[size];
    Arrays.setAll(data, i -> level + spread * (i % 2 == 0 ? 1 : -1));
    return everySecond(data);
  }

  private static WanderLikelihood wandering(double memorySeconds) {
    return new WanderLikelihood(
        SERIES.seconds(), new boolean[150], SERIES.values(), SLOPE, memorySeconds);
  }

  private static WanderLikelihood of(DenseWander dense, double memorySeconds) {
    return new WanderLikelihood(
        dense.seconds(), dense.starts(), dense.data(), dense.regressors(), memorySeconds);
  }
}
