package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The closed forms of a proportional loop, against values worked out beforehand with another
 * program (Monte Carlo of two million steps, Riccati iteration, numerical minimisation); formulas
 * as in Astrom and Wittenmark, Computer-Controlled Systems, and Muth (1960), J. Am. Stat. Assoc.
 * 55, 299.
 */
class LoopTheoryTest {
  @Tag("published")
  @ParameterizedTest(name = "gain {0}")
  @CsvSource({
    "0.2, 0.1111111111, -0.10",
    "0.5, 0.3333333333, -0.25",
    "0.7, 0.5384615385, -0.35",
    "1.0, 1, -0.50",
    "1.5, 3, -0.75"
  })
  void noiseAloneMovesTheStar(double gain, double amplification, double lag1) {
    assertThat(LoopTheory.noiseAmplification(gain)).isCloseTo(amplification, within(1e-10));
    assertThat(LoopTheory.motionVariance(gain, 0, 1)).isCloseTo(amplification, within(1e-10));
    assertThat(LoopTheory.lag1(gain, 0, 1)).isCloseTo(lag1, within(1e-12));
  }

  @Tag("published")
  @ParameterizedTest(name = "wander {0}, noise {1}")
  @CsvSource({
    "0.01, 1, 0.0951249220, 0.1051249220, 0.1960784314, 0.5494505495",
    "0.1, 1, 0.2701562119, 0.3701562119, 0.3725490196, 0.6483516484",
    "1, 1, 0.6180339887, 1.6180339887, 2.1372549020, 1.6373626374",
    "0.04, 0.09, 0.4805061467, 0.0832455532, 0.0943137255, 0.0924175824"
  })
  void bestGainIsTheSteadyKalmanGain(
      double q, double r, double best, double least, double atThree, double atSeven) {
    assertThat(LoopTheory.bestGain(q, r)).isCloseTo(best, within(1e-10));
    assertThat(LoopTheory.motionVariance(best, q, r)).isCloseTo(least, within(1e-9));
    assertThat(LoopTheory.motionVariance(0.3, q, r)).isCloseTo(atThree, within(1e-9));
    assertThat(LoopTheory.motionVariance(0.7, q, r)).isCloseTo(atSeven, within(1e-9));
  }

  @Tag("published")
  @ParameterizedTest(name = "gain {0}, period {1} s, cadence {2} s")
  @CsvSource({
    "0.7, 480, 2, 0.0373910006",
    "0.5, 480, 4, 0.1044219710",
    "0.7, 638.25, 2, 0.0281230524",
    "0.5, 60, 2, 0.4009571627",
    "0.7, 10, 2, 1.2360124262",
    "0.7, 8, 4, 1.5384615385"
  })
  void sinusoidIsLetThrough(double gain, double period, double cadence, double share) {
    assertThat(LoopTheory.sinusoidShare(gain, period / cadence)).isCloseTo(share, within(1e-10));
  }

  @Tag("published")
  @Test
  void offsetsOfNeighboursInTheMixedCase() {
    assertThat(LoopTheory.lag1(0.5, 0.1, 1)).isCloseTo(-0.1818181818, within(1e-10));
    assertThat(LoopTheory.lag1(0.7, 0.04, 0.09)).isCloseTo(-0.1933734940, within(1e-10));
    assertThat(LoopTheory.lag1(0.3, 1, 1)).isCloseTo(0.38125, within(1e-10));
  }

  /** SciPy 1.10.1, solve_discrete_are with A = C = 1: variance one step ahead, and filter gain. */
  @Tag("published")
  @ParameterizedTest(name = "wander {0}, noise {1}")
  @CsvSource({
    "4e-4, 0.09, 0.00620333, 0.06448147",
    "0.0025, 0.2025, 0.02378470, 0.10510961",
    "0.01, 0.25, 0.05524938, 0.18099751",
    "0.04, 0.09, 0.08324555, 0.48050615"
  })
  void noControllerDoesBetterThanTheBestGain(double q, double r, double least, double gain) {
    assertThat(LoopTheory.bestGain(q, r)).isCloseTo(gain, within(1e-8));
    assertThat(LoopTheory.motionVariance(LoopTheory.bestGain(q, r), q, r))
        .isCloseTo(least, within(1e-8));
  }

  /** SciPy 1.10.1, solve_discrete_lyapunov, no delay: noise alone, wander alone, both. */
  @Tag("published")
  @Test
  void motionAgreesWithTheLyapunovEquation() {
    assertThat(LoopTheory.motionVariance(0.3, 0, 1)).isCloseTo(0.17647059, within(1e-8));
    assertThat(LoopTheory.motionVariance(0.5, 0, 1)).isCloseTo(0.33333333, within(1e-8));
    assertThat(LoopTheory.motionVariance(0.3, 1, 0)).isCloseTo(1.96078431, within(1e-8));
    assertThat(LoopTheory.motionVariance(0.4, 0.0025, 0.2025)).isCloseTo(0.05453125, within(1e-8));
  }

  @Test
  void rampIsLaggedBehindByItsStepOverTheGain() {
    assertThat(LoopTheory.rampLag(0.7, 0.1)).isCloseTo(0.142857142857, within(1e-12));
  }

  @Test
  void noLoopIsStableFromTwoOn() {
    assertThat(LoopTheory.noiseAmplification(2)).isInfinite();
    assertThat(LoopTheory.motionVariance(2.5, 0, 1)).isInfinite();
  }
}
