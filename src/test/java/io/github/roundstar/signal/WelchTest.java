package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Differences of two means and of two samples' ranks, against scipy.stats. */
class WelchTest {
  static final double[] BEFORE = {0.92, 1.05, 0.88, 1.21, 1.10, 0.97, 1.33, 1.02, 0.95, 1.18};
  static final double[] AFTER = {0.71, 0.84, 0.66, 0.94, 0.78, 0.69, 0.87, 0.75};

  /** Welch (1947), Biometrika 34, 28; values from scipy.stats 1.2.1. */
  @Tag("published")
  @Test
  void agreesWithPublishedValues() {
    Welch welch = Welch.between(Welch.Mean.of(AFTER), Welch.Mean.of(BEFORE));
    assertThat(welch.t()).isCloseTo(4.944144858794, within(1e-11));
    assertThat(welch.degreesOfFreedom()).isCloseTo(15.643838440933, within(1e-10));
    assertThat(welch.probability()).isCloseTo(0.000156305714, within(1e-11));
    assertThat(welch.standardError()).isCloseTo(0.0568349043, within(1e-9));
    assertThat(welch.interval().lo95()).isCloseTo(0.1602920643, within(1e-9));
    assertThat(welch.interval().hi95()).isCloseTo(0.4017079357, within(1e-9));
  }

  /**
   * SciPy 1.17.1: the interval of 0.281 ends at 0.40170793568; the least difference that passes is
   * the quantile of Student's t times the error.
   */
  @Tag("published")
  @Test
  void isWithinWhatTheIntervalIsWithin() {
    Welch up = Welch.between(Welch.Mean.of(AFTER), Welch.Mean.of(BEFORE));
    Welch down = Welch.between(Welch.Mean.of(BEFORE), Welch.Mean.of(AFTER));
    for (Welch welch : new Welch[] {up, down}) {
      assertThat(welch.isWithin(0.40170794)).isTrue();
      assertThat(welch.isWithin(0.40170793)).isFalse();
      assertThat(welch.isWithin(0.2)).isFalse();
      assertThat(welch.least(0.05)).isCloseTo(0.1207079356836, within(1e-9));
      assertThat(welch.least(0.01)).isCloseTo(0.1665030993949, within(1e-9));
    }
    assertThat(down.difference()).isCloseTo(-0.281, within(1e-12));
    assertThat(down.t()).isCloseTo(-4.944144858794, within(1e-11));
    assertThat(down.probability()).isCloseTo(0.000156305714, within(1e-11));
  }

  @Test
  void withoutScatterOnlyTheDifferenceCounts() {
    Welch exact = Welch.between(new Welch.Mean(1, 0, 4), new Welch.Mean(2, 0, 5));
    assertThat(exact.isWithin(1.001)).isTrue();
    assertThat(exact.isWithin(1)).isFalse();
    assertThat(exact.degreesOfFreedom()).isEqualTo(9);
    assertThatThrownBy(() -> Welch.Mean.of(new double[1])).hasMessageContaining("at least 2");
  }

  @Test
  void equalMeansWithoutScatterDifferInNothing() {
    Welch.Mean mean = new Welch.Mean(1, 0, 4);
    assertThat(Welch.between(mean, mean).probability()).isEqualTo(1);
    assertThat(Welch.between(mean, new Welch.Mean(2, 0, 4)).probability()).isZero();
  }
}
