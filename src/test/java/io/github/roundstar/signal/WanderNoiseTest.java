package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Wander and noise are told apart, by the same likelihood as a dense computation. */
class WanderNoiseTest {
  private static final double[][] NO_REGRESSORS = {};

  @Test
  @Tag("identity")
  void recoversWanderAndNoiseWithoutBias() {
    double noise = 0;
    double wander = 0;
    for (long seed = 0; seed < 40; seed++) {
      WanderNoise fit = fit(WhiteningTest.WanderingSeries.of(seed, 1500, 0.45, 0.05));
      noise += fit.noiseVariance() / 40;
      wander += fit.noiseVariance() * fit.ratioPerSecond() / 40;
    }
    // A single variance of 1500 samples scatters by 3.7 %, the mean of 40 by 0.6 %; wander by more.
    assertThat(noise).isCloseTo(0.45 * 0.45, within(0.02 * 0.45 * 0.45));
    assertThat(wander).isCloseTo(0.05 * 0.05, within(0.1 * 0.05 * 0.05));
  }

  @Test
  @Tag("identity")
  void noiseAloneHasNextToNoWander() {
    for (long seed = 0; seed < 10; seed++) {
      WanderNoise fit = fit(WhiteningTest.WanderingSeries.of(seed, 1000, 0.5, 0));
      assertThat(fit.noiseVariance()).isCloseTo(0.25, within(0.05));
      // Over the whole series the wander stays below a third of a single frame's noise.
      assertThat(fit.ratioPerSecond() * 1000).isLessThan(0.1);
    }
  }

  @Test
  @Tag("identity")
  void wanderAloneLeavesNoNoise() {
    for (long seed = 0; seed < 10; seed++) {
      WanderNoise fit = fit(WhiteningTest.WanderingSeries.of(seed, 1000, 0, 0.3));
      assertThat(fit.noiseVariance() * fit.ratioPerSecond()).isCloseTo(0.09, within(0.02));
      assertThat(fit.noiseVariance()).isLessThan(0.01);
    }
  }

  @ParameterizedTest
  @Tag("identity")
  @ValueSource(doubles = {1e-6, 1e-3, 0.03, 0.3, 4, 1e3})
  void likelihoodIsTheDenseOneButForAConstant(double ratio) {
    DenseWander reference = DenseWander.example(0.1);
    DenseWander dense = reference.withRatio(ratio);
    assertThat(likelihood(dense) - likelihood(reference))
        .isCloseTo(
            dense.restrictedLogLikelihood() - reference.restrictedLogLikelihood(), within(1e-9));
  }

  @Test
  @Tag("identity")
  void fitIsWhereTheDenseLikelihoodIsHighest() {
    DenseWander example = DenseWander.example(0.1);
    double best =
        new BrentOptimizer(1e-10, 1e-10)
            .optimize(
                GoalType.MAXIMIZE,
                new UnivariateObjectiveFunction(
                    log -> example.withRatio(Math.pow(10, log)).restrictedLogLikelihood()),
                new SearchInterval(-4, 3, -0.5),
                new MaxEval(200))
            .getPoint();
    WanderNoise fit =
        WanderNoise.fit(example.seconds(), example.starts(), example.data(), example.regressors())
            .orElseThrow();
    assertThat(Math.log10(fit.ratioPerSecond())).isCloseTo(best, within(2e-4));
    DenseWander there = example.withRatio(fit.ratioPerSecond());
    assertThat(fit.noiseVariance())
        .isCloseTo(there.sumOfSquares() / there.degreesOfFreedom(), within(1e-10));
  }

  @ParameterizedTest
  @Tag("identity")
  @ValueSource(doubles = {1e-9, 1e-4, 0.02, 0.3, 1e5})
  void searchFromAnotherFitEndsAtTheSamePlace(double startRatio) {
    WhiteningTest.WanderingSeries series = WhiteningTest.WanderingSeries.of(3, 1500, 0.45, 0.05);
    WanderNoise cold = fit(series);
    WanderNoise warm =
        new WanderNoise(1, startRatio)
            .refit(series.seconds(), new boolean[1500], series.values(), NO_REGRESSORS)
            .orElseThrow();
    assertThat(Math.log10(warm.ratioPerSecond() / cold.ratioPerSecond()))
        .isCloseTo(0, within(2e-4));
    assertThat(warm.noiseVariance()).isCloseTo(cold.noiseVariance(), within(1e-5));
  }

  @Test
  void constantSeriesSaysNothing() {
    double[] seconds = new double[100];
    Arrays.setAll(seconds, i -> 2.0 * i);
    double[] constant = new double[100];
    Arrays.fill(constant, 1234.567);
    double[] line = new double[100];
    Arrays.setAll(line, i -> 1234.567 + 0.321 * seconds[i]);
    assertThat(WanderNoise.fit(seconds, new boolean[100], constant, NO_REGRESSORS)).isEmpty();
    assertThat(WanderNoise.fit(seconds, new boolean[100], new double[100], NO_REGRESSORS))
        .isEmpty();
    assertThat(new WanderNoise(1, 0.1).refit(seconds, new boolean[100], constant, NO_REGRESSORS))
        .isEmpty();
    assertThat(WanderNoise.fit(seconds, new boolean[100], line, new double[][] {seconds}))
        .isEmpty();
  }

  @Test
  void needsTwoStepsMoreThanRegressors() {
    double[] seconds = {0, 1, 2, 3};
    double[] data = {0, 1, -1, 2};
    double[][] slope = {seconds};
    assertThat(WanderNoise.fit(seconds, new boolean[4], data, slope)).isPresent();
    boolean[] twoPieces = {true, false, true, false};
    assertThat(WanderNoise.fit(seconds, twoPieces, data, slope)).isEmpty();
    assertThat(WanderNoise.fit(new double[0], new boolean[0], new double[0], NO_REGRESSORS))
        .isEmpty();
  }

  /**
   * The differences of the series are a moving average of first order with autocovariances q dt + 2
   * R and -R; differencing multiplies a spectrum by 4 sin^2(pi f dt): Box &amp; Jenkins, Time
   * Series Analysis, on the IMA(0,1,1) process.
   */
  @ParameterizedTest
  @Tag("published")
  @ValueSource(doubles = {1e-3, 0.01, 0.08, 0.1666})
  void densityIsThatOfTheDifferencesSummedUp(double hertz) {
    double step = 3;
    double phase = 2 * Math.PI * hertz * step;
    double wander = 0.02 * 0.02;
    double noise = 0.45 * 0.45;
    double ofDifferences = 2 * step * (wander * step + 2 * noise + 2 * -noise * Math.cos(phase));
    double sine = Math.sin(phase / 2);
    assertThat(new WanderNoise(noise, wander / noise).density(hertz, step))
        .isCloseTo(ofDifferences / (4 * sine * sine), within(1e-9 * ofDifferences / (sine * sine)));
  }

  /**
   * Noise with a memory is an autoregression of first order, of spectrum 2 R (1 - a^2) dt / (1 +
   * a^2 - 2 a cos(2 pi f dt)): Box &amp; Jenkins, Time Series Analysis, section 3.2.3.
   */
  @ParameterizedTest
  @Tag("published")
  @ValueSource(doubles = {1e-3, 0.01, 0.08, 0.1666})
  void densityOfNoiseWithAMemoryIsThatOfAnAutoregression(double hertz) {
    double step = 3;
    double share = Math.exp(-step / 4);
    double cosine = Math.cos(2 * Math.PI * hertz * step);
    double noise = 2 * 0.2 * (1 - share * share) * step / (1 + share * share - 2 * share * cosine);
    double walk = 2 * 0.2 * 0.01 * step * step / (2 - 2 * cosine);
    assertThat(new WanderNoise(0.2, 0.01, 4).density(hertz, step))
        .isCloseTo(noise + walk, within(1e-9 * (noise + walk)));
  }

  @Test
  void whiteIsTheSameWithoutItsMemory() {
    assertThat(new WanderNoise(2, 0.1, 3).white()).isEqualTo(new WanderNoise(2, 0.1, 0));
    double[] seconds = {0, 1, 2.5, 3};
    double[] data = {1, 4, 2, 8};
    assertThat(new WanderNoise(2, 0.1, 3).whitening(seconds, new boolean[4]).apply(data))
        .containsExactly(Whitening.of(seconds, new boolean[4], 0.1, 3).apply(data));
    assertThat(new WanderNoise(2, 0.1, 3).remembered(6)).isCloseTo(Math.exp(-2), within(1e-15));
  }

  private static WanderNoise fit(WhiteningTest.WanderingSeries series) {
    return WanderNoise.fit(
            series.seconds(), new boolean[series.seconds().length], series.values(), NO_REGRESSORS)
        .orElseThrow();
  }

  private static double likelihood(DenseWander dense) {
    Whitening whitening = dense.whitening();
    WhiteRegression fit =
        WhiteRegression.of(whitening.apply(dense.data()), whitening.apply(dense.regressors()));
    return -0.5
        * (fit.degreesOfFreedom() * Math.log(fit.sumOfSquares() / fit.degreesOfFreedom())
            + whitening.logDeterminant()
            + fit.logDeterminant());
  }
}
