package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A gear pair with play loses exactly its play at each reversal. */
class PlayTest {
  /** Direct evaluation of the play operator in Python, half width 1.5. */
  @Test
  @Tag("published")
  void drivenSideFollowsTheFlanks() {
    double[] driver = {0, 1, 2, 3, 4, 3, 2, 1, 0, -1, -2, 0, 2, 5};
    double[] driven = {0, 0, 0.5, 1.5, 2.5, 2.5, 2.5, 2.5, 1.5, 0.5, -0.5, -0.5, 0.5, 3.5};
    Play play = new Play(3, 0);

    for (int i = 0; i < driver.length; i++) {
      assertThat(play.follow(driver[i])).as("step %d", i).isEqualTo(driven[i]);
    }
  }

  @Test
  void negativePlayIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Play(-1, 0));
  }

  /**
   * First harmonic of a play of width 1 under a sinusoid: python-control 0.10.2,
   * friction_backlash_nonlinearity, describing function at the amplitudes 1 and 2.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({"1, 0.5, -0.31830989", "2, 0.80449889, -0.23873241"})
  void firstHarmonicIsThatOfTheDescribingFunction(double amplitude, double real, double imaginary) {
    int steps = 200_000;
    Play play = new Play(1, 0);
    double inPhase = 0;
    double quadrature = 0;
    for (int i = 0; i < 2 * steps; i++) {
      double angle = 2 * Math.PI * i / steps;
      double driven = play.follow(amplitude * Math.sin(angle));
      if (i >= steps) {
        inPhase += 2 * driven * Math.sin(angle) / steps / amplitude;
        quadrature += 2 * driven * Math.cos(angle) / steps / amplitude;
      }
    }
    assertThat(inPhase).isCloseTo(real, within(1e-4));
    assertThat(quadrature).isCloseTo(imaginary, within(1e-4));
  }
}
