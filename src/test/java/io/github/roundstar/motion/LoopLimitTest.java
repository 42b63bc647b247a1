package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The best that any controller can do. */
class LoopLimitTest {
  /** Computed outside with SciPy's solve_discrete_are, A = C = 1, and by the closed form. */
  @ParameterizedTest
  @Tag("published")
  @CsvSource({
    "4e-4, 0.09, 0.00620333, 0.06448147",
    "0.0025, 0.2025, 0.02378470, 0.10510961",
    "0.01, 0.25, 0.05524938, 0.18099751",
    "0.04, 0.09, 0.08324555, 0.48050615"
  })
  void whiteNoiseGivesTheRiccatiEquationsSolution(
      double wander, double noise, double motion, double gain) {
    LoopLimit limit = LoopLimit.of(new LoopLimit.Model(wander, noise, 0));

    assertThat(limit.motionArcsec2()).isCloseTo(motion, offset(5e-9));
    assertThat(limit.gain()).isCloseTo(gain, offset(5e-9));
  }

  /** The errors of a long invented series have the variance that the equation foretells. */
  @ParameterizedTest
  @Tag("identity")
  @CsvSource({"0.0025, 0.2025, 0", "0.0025, 0.2025, 0.5", "0.01, 0.04, 0.8"})
  void foretoldPlacesAreOffByAsMuch(double wander, double noise, double remembered) {
    LoopLimit.Model model = new LoopLimit.Model(wander, noise, remembered);
    int n = 400_000;
    double[] place = new double[n];
    double[] star = new double[n];
    SplittableRandom random = new SplittableRandom(11);
    double level = 0;
    double state = Math.sqrt(noise) * random.nextGaussian();
    for (int i = 0; i < n; i++) {
      place[i] = level;
      star[i] = state;
      level += Math.sqrt(wander) * random.nextGaussian();
      state =
          remembered * state
              + Math.sqrt(noise * (1 - remembered * remembered)) * random.nextGaussian();
    }
    LoopLimit limit = LoopLimit.of(model);
    double square = 0;
    for (double error : limit.errors(place, star)) {
      square += error * error / n;
    }
    assertThat(square).as("seed 11").isCloseTo(limit.motionArcsec2(), offset(0.04 * square));
  }

  /**
   * Whittle's formula by hand for white noise: the root of q + s |1 - z|^2 is one less the gain.
   */
  @Test
  @Tag("identity")
  void smoothingErrorRemembersWhatTheFilterDoes() {
    LoopLimit.Model model = new LoopLimit.Model(0.01, 0.25, 0);

    assertThat(LoopLimit.smoothingMemory(model))
        .isCloseTo(1 - LoopLimit.of(model).gain(), offset(1e-9));
  }

  @Test
  @Tag("identity")
  void noPlainGainBeatsIt() {
    double limit = LoopLimit.of(new LoopLimit.Model(0.0025, 0.2025, 0)).motionArcsec2();
    double best = Double.POSITIVE_INFINITY;
    for (double gain = 0.02; gain < 1; gain += 0.01) {
      double variance = LoopTheory.motionVariance(gain, 0.0025, 0.2025);
      best = Math.min(best, variance);
      assertThat(variance).isGreaterThanOrEqualTo(limit - 1e-12);
    }
    assertThat(best).isCloseTo(limit, offset(2e-4));
  }
}
