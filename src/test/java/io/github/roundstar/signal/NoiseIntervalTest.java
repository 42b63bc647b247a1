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

  /** The ratio's own error is no small part of it, beside that of a variance of 148 steps. */
  @Test
  @Tag("identity")
  void wanderMakesTheNoiseLessCertain() {
    WhiteningTest.WanderingSeries series = WhiteningTest.WanderingSeries.of(5, 150, 0.45, 0.15);
    boolean[] starts = new boolean[150];
    double[][] slope = {series.seconds()};
    Estimate noise =
        WanderNoise.fit(series.seconds(), starts, series.values(), slope)
            .orElseThrow()
            .measured(series.seconds(), starts, series.values(), slope)
            .noise()
            .orElseThrow();
    assertThat(Math.log(noise.hi95() / noise.value()))
        .isGreaterThan(1.2 * 1.959964 * Math.sqrt(2 / 148.0) / 2);
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
