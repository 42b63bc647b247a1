package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.signal.WanderNoise;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Colour and size of noise by differences. */
class NoiseColourTest {
  private static NoiseColour of(double[] values, WanderNoise model) {
    double[] seconds = IntStream.range(0, values.length).mapToDouble(i -> i).toArray();
    MotionSeries motion = new MotionSeries(seconds, values, new boolean[values.length]);
    return NoiseColour.of(JoltFree.all(motion, new double[0][], model), 1);
  }

  /**
   * A list whose second differences have mean square over six of 0.12838541667: computed outside
   * this project with numpy; the form is that of Gasser, Sroka and Jennen-Steinmetz (1986).
   */
  @Test
  @Tag("published")
  void secondDifferencesAreThoseOfTheWorkedExample() {
    double[] x = {0.1, 0.4, -0.2, 0.3, 0.0, -0.5, 0.2, 0.6, -0.1, 0.05};
    assertThat(of(x, new WanderNoise(0.1, 0)).bySecondDifferences())
        .isCloseTo(0.35830910771, within(1e-11));
  }

  @ParameterizedTest(name = "r {0}, walk {1}")
  @Tag("identity")
  @CsvSource({"0, 0", "0, 0.1", "0.3, 0.1", "0.5, 0.05", "-0.2, 0"})
  void autocorrelationIsThatOfTheNoiseWhateverTheWalkDoes(double r, double step) {
    Random random = new Random(5);
    double[] values = new double[40_000];
    double walk = 0;
    double noise = 0;
    for (int i = 0; i < values.length; i++) {
      walk += step * random.nextGaussian();
      noise = r * noise + Math.sqrt(1 - r * r) * random.nextGaussian();
      values[i] = walk + 0.5 * noise;
    }
    NoiseColour colour = of(values, new WanderNoise(0.25, 4 * step * step));
    // The standard error is near 0.01 at r = 0 and four times that at r = 0.5.
    assertThat(NoiseColour.lag1(List.of(colour)).value().orElseThrow()).isCloseTo(r, within(0.06));
  }

  @Test
  void wanderAloneShowsNoColour() {
    Random random = new Random(5);
    double[] values = new double[2000];
    for (int i = 1; i < values.length; i++) {
      values[i] = values[i - 1] + random.nextGaussian();
    }
    assertThat(NoiseColour.lag1(List.of(of(values, new WanderNoise(1e-4, 1e4)))).because())
        .contains("too small");
  }
}
