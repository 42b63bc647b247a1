package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Noise that remembers itself is told from wander, and how long it does. */
@Tag("identity")
class NoiseMemoryTest {
  private static final int SAMPLES = 1500;
  private static final int SERIES = 24;
  private static final double STEP = 2.5;
  private static final double[][] NO_REGRESSORS = {};

  private static WanderNoise.Remembering found(int seed, double correlation) {
    Random random = new Random(seed);
    double[] seconds = new double[SAMPLES];
    double[] data = new double[SAMPLES];
    double walk = 0;
    double noise = random.nextGaussian();
    for (int i = 0; i < SAMPLES; i++) {
      seconds[i] = i * STEP;
      walk += 0.1 * random.nextGaussian();
      noise =
          correlation * noise + Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
      data[i] = walk + 0.4 * noise;
    }
    boolean[] starts = new boolean[SAMPLES];
    return WanderNoise.fit(seconds, starts, data, NO_REGRESSORS)
        .orElseThrow()
        .remembering(seconds, starts, data, NO_REGRESSORS);
  }

  /**
   * Mean of {@value #SERIES} series against the truth, at four of the error that each one states.
   */
  @ParameterizedTest(name = "correlation {0}")
  @CsvSource({"0", "0.1", "0.4", "0.7"})
  void correlationFromSampleToSampleIsFoundWithItsError(double correlation) {
    double sum = 0;
    double variances = 0;
    double squares = 0;
    for (int seed = 1; seed <= SERIES; seed++) {
      WanderNoise.Remembering found = found(seed, correlation);
      double here = found.model().remembered(STEP);
      double error = found.longer().remembered(STEP) - here;
      double value = here + found.below() * error;
      sum += value;
      variances += error * error;
      squares += (value - correlation) * (value - correlation);
      assertThat(Math.sqrt(found.model().noiseVariance())).isCloseTo(0.4, within(0.12));
    }
    assertThat(sum / SERIES).isCloseTo(correlation, within(4 * Math.sqrt(variances) / SERIES));
    // The stated error against the scatter, at 99 % of chi-square over 24 degrees of freedom.
    assertThat(squares / variances).isBetween(9.9 / SERIES, 45.6 / SERIES);
  }

  /**
   * The dense likelihood has its peak there, as wide as stated. Steps of its derivatives are not
   * those of the search, and it is no parabola: a fiftieth of the error for the place, a tenth of
   * it for the width.
   */
  @ParameterizedTest(name = "correlation {0}, seed {1}")
  @CsvSource({"0.1, 1", "0.2, 2", "0.4, 1", "0.4, 2", "0.4, 3", "0.7, 1", "0.7, 3"})
  void memoryAndItsErrorAreThoseOfTheDenseLikelihood(double correlation, long seed) {
    DenseMemory series = DenseMemory.series(seed, 150, correlation, 0.15);
    WanderNoise.Remembering found = series.found();
    double here = found.model().remembered(STEP);
    double logRatio = Math.log10(found.model().ratioPerSecond());
    DenseMemory.Peak peak = series.near(here, logRatio);
    assertThat(here).isCloseTo(peak.correlation(), within(0.02 * peak.error()));
    assertThat(logRatio).isCloseTo(peak.logRatio(), within(0.02));
    double error = found.longer().remembered(STEP) - here;
    assertThat(error).isCloseTo(peak.error(), within(0.1 * peak.error()));
    assertThat(found.standardErrors()).isCloseTo(here / error, within(0.02));
    double longer = Math.log10(found.longer().ratioPerSecond());
    assertThat(longer)
        .isCloseTo(series.near(here + error, longer).ratioHere(), within(0.15 * peak.ratioError()));
  }

  @Test
  void whiteNoiseGetsNoMemoryOnAboutHalfOfTheSeries() {
    int none = 0;
    for (int seed = 1; seed <= SERIES; seed++) {
      none += found(seed, 0).model().memorySeconds() == 0 ? 1 : 0;
    }
    assertThat(none).isBetween(5, 19);
  }

  /**
   * A correlation below none is cut off, and told in its errors: the peak of the parabola that
   * stands on the smallest one.
   */
  @ParameterizedTest
  @ValueSource(longs = {3, 5, 12})
  void correlationBelowNoneIsToldInItsErrors(long seed) {
    DenseMemory series = DenseMemory.series(seed, 150, 0, 0.15);
    WanderNoise.Remembering found = series.found();
    double logRatio = Math.log10(found.model().ratioPerSecond());
    DenseMemory.Peak peak = series.near(0.05, series.near(0.05, logRatio).logRatio());
    assertThat(peak.correlation()).isNegative();
    assertThat(found.model().memorySeconds()).isZero();
    assertThat(found.below())
        .isCloseTo(peak.correlation() / peak.error(), within(0.03))
        .isNegative();
  }

  /** Beyond the bound it is another walk. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void memoryHasABound(long seed) {
    WanderNoise.Remembering found = DenseMemory.series(seed, 3000, 0.95, 0.05).found();
    assertThat(found.model().remembered(STEP)).isCloseTo(0.9, within(1e-12));
    assertThat(found.longer().remembered(STEP)).isCloseTo(0.9, within(1e-12));
    assertThat(found.clear()).isTrue();
  }

  /** A walk alone: all ratios above some are alike, and there is no peak to be found. */
  @Test
  void walkWithoutNoiseKeepsTheModelOfWhiteNoise() {
    double[] seconds = new double[100];
    double[] data = new double[100];
    Random random = new Random(1);
    for (int i = 1; i < 100; i++) {
      seconds[i] = seconds[i - 1] + STEP;
      data[i] = data[i - 1] + random.nextGaussian();
    }
    boolean[] starts = new boolean[100];
    WanderNoise white = new WanderNoise(1e-6, 1e6);
    assertThat(white.remembering(seconds, starts, data, NO_REGRESSORS))
        .isEqualTo(new WanderNoise.Remembering(white, white, 0, 0));
  }

  /** Twenty samples of a walk say nothing of the noise: whatever comes out is a usable model. */
  @Test
  void fewSamplesGiveAModelThatCanBeUsed() {
    for (int seed = 1; seed <= 50; seed++) {
      Random random = new Random(seed);
      double[] seconds = new double[20];
      double[] data = new double[20];
      for (int i = 0; i < 20; i++) {
        seconds[i] = i;
        data[i] = (i == 0 ? 0 : data[i - 1]) + random.nextGaussian();
      }
      boolean[] starts = new boolean[20];
      WanderNoise white = WanderNoise.fit(seconds, starts, data, NO_REGRESSORS).orElseThrow();
      WanderNoise.Remembering found = white.remembering(seconds, starts, data, NO_REGRESSORS);
      assertThat(found.model().remembered(1)).isBetween(0.0, 0.9);
      assertThat(found.longer().remembered(1)).isBetween(0.0, 0.9);
      assertThat(found.model().noiseVariance()).isFinite().isNotNegative();
      assertThat(found.below()).isNotPositive().isFinite();
    }
  }
}
