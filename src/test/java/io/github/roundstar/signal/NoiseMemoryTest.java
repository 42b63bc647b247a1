package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  @Test
  void whiteNoiseGetsNoMemoryOnAboutHalfOfTheSeries() {
    int none = 0;
    for (int seed = 1; seed <= SERIES; seed++) {
      none += found(seed, 0).model().memorySeconds() == 0 ? 1 : 0;
    }
    assertThat(none).isBetween(5, 19);
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
