package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How well a fit of wander and noise knows the noise. */
class NoiseIntervalTest {
  private static final double[][] NO_REGRESSORS = {};

  /**
   * The interval of the noise against the information matrix of both parameters at once, by
   * differences of the dense likelihood: its inverse is the covariance, half of the logarithm of
   * the variance that of the standard deviation.
   */
  @Test
  @Tag("identity")
  void intervalOfTheNoiseIsThatOfTheInformationMatrix() {
    WhiteningTest.WanderingSeries series = WhiteningTest.WanderingSeries.of(5, 150, 0.45, 0.15);
    boolean[] starts = new boolean[150];
    starts[0] = true;
    double[][] slope = {series.seconds()};
    WanderNoise fit =
        WanderNoise.fit(series.seconds(), starts, series.values(), slope).orElseThrow();
    DenseWander dense =
        new DenseWander(series.seconds(), starts, series.values(), slope, fit.ratioPerSecond());
    double h = 0.02;
    double x = Math.log(fit.noiseVariance());
    double y = Math.log(fit.ratioPerSecond());
    double middle = full(dense, x, y);
    double xx = (full(dense, x + h, y) - 2 * middle + full(dense, x - h, y)) / (h * h);
    double yy = (full(dense, x, y + h) - 2 * middle + full(dense, x, y - h)) / (h * h);
    double xy =
        (full(dense, x + h, y + h)
                - full(dense, x + h, y - h)
                - full(dense, x - h, y + h)
                + full(dense, x - h, y - h))
            / (4 * h * h);
    double variance = -yy / (xx * yy - xy * xy);
    Estimate noise =
        fit.measured(series.seconds(), starts, series.values(), slope).noise().orElseThrow();
    assertThat(noise.value()).isCloseTo(Math.sqrt(fit.noiseVariance()), within(1e-12));
    double half = 1.959964 * Math.sqrt(variance) / 2;
    // Both take second differences, over unlike steps.
    assertThat(Math.log(noise.hi95() / noise.value())).isCloseTo(half, within(5e-4 * half));
    assertThat(Math.log(noise.value() / noise.lo95())).isCloseTo(half, within(5e-4 * half));
    // The ratio's own error is no small part of it here: without it the interval is that of a
    // variance with 148 degrees of freedom.
    assertThat(half).isGreaterThan(1.2 * 1.959964 * Math.sqrt(2 / 148.0) / 2);
  }

  /** The log likelihood of both parameters, by their logarithms, but for a constant. */
  private static double full(DenseWander like, double logNoise, double logRatio) {
    DenseWander dense = like.withRatio(Math.exp(logRatio));
    int free = dense.degreesOfFreedom();
    double squares = dense.sumOfSquares();
    return dense.restrictedLogLikelihood()
        + 0.5 * free * Math.log(squares / free)
        - 0.5 * free * logNoise
        - 0.5 * squares * Math.exp(-logNoise);
  }

  /**
   * A walk hides a noise far smaller than its steps. Of noise alone, four steps tell the deviation
   * to a factor of exp(1.959964 sqrt(2 / 4) / 2) = 1.9996, three to 2.23, more than is called
   * known.
   */
  @Test
  @Tag("identity")
  void noiseThatWanderOrChanceHidesIsNotTold() {
    WhiteningTest.WanderingSeries walk = WhiteningTest.WanderingSeries.of(2, 300, 0.001, 0.3);
    assertThat(
            WanderNoise.fit(walk.seconds(), new boolean[300], walk.values(), NO_REGRESSORS)
                .orElseThrow()
                .measured(walk.seconds(), new boolean[300], walk.values(), NO_REGRESSORS)
                .noise())
        .isEmpty();
    Estimate five = noiseOf(0, 1, -1, 2, 0.5).orElseThrow();
    assertThat(five.hi95() / five.value()).isCloseTo(1.9996, within(5e-5));
    assertThat(five.value() / five.lo95()).isCloseTo(1.9996, within(5e-5));
    assertThat(noiseOf(0, 1, -1, 2)).isEmpty();
  }

  private static Optional<Estimate> noiseOf(double... data) {
    double[] seconds = new double[data.length];
    Arrays.setAll(seconds, i -> i);
    boolean[] onePiece = new boolean[data.length];
    return WanderNoise.fit(seconds, onePiece, data, NO_REGRESSORS)
        .orElseThrow()
        .measured(seconds, onePiece, data, NO_REGRESSORS)
        .noise();
  }

  /** Noise alone: the likelihood is flat towards no wander, and the noise is a plain variance. */
  @Test
  @Tag("identity")
  void noiseWithoutWanderIsKnownAsWellAsAVariance() {
    double[] noise = KnownSeries.unitNoise(1000);
    double[] seconds = new double[1000];
    Arrays.setAll(seconds, i -> i);
    WanderNoise fit =
        WanderNoise.fit(seconds, new boolean[1000], noise, NO_REGRESSORS).orElseThrow();
    Estimate known =
        fit.measured(seconds, new boolean[1000], noise, NO_REGRESSORS).noise().orElseThrow();
    assertThat(known.value()).isCloseTo(1, within(0.03));
    assertThat(Math.log(known.hi95() / known.value()))
        .isCloseTo(1.959964 * Math.sqrt(2 / 999.0) / 2, within(0.005));
  }
}
