package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The robust scatter is that of the many, whatever the few do. */
class RobustScaleTest {
  /** By hand: median 4, deviations 3 2 0 0 1 3 96, their median 2. */
  @Test
  @Tag("identity")
  void isTheScaledMedianDeviation() {
    double factor = 1 / new NormalDistribution(null, 0, 1).inverseCumulativeProbability(0.75);
    assertThat(RobustScale.of(new double[] {1, 2, 4, 4, 5, 7, 100}))
        .isCloseTo(2 * factor, within(1e-8));
  }

  @Test
  @Tag("identity")
  void findsTheGaussianUnderWildValues() {
    Random random = new Random(3);
    double[] values = new double[20_000];
    for (int i = 0; i < values.length; i++) {
      values[i] = 10 + 0.4 * random.nextGaussian() + (i % 50 == 0 ? 1000 : 0);
    }
    assertThat(RobustScale.of(values)).isCloseTo(0.41, within(0.015));
  }

  @Test
  void equalValuesHaveNoScatter() {
    assertThat(RobustScale.of(new double[] {2, 2, 2, 9})).isZero();
  }
}
