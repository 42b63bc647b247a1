package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Mann and Whitney (1947), Annals of Mathematical Statistics 18, 50; values from scipy.stats. */
class RankTestTest {
  private static final double[] TIED = {1.1, 0.9, 1.3, 1.0, 1.2, 0.9};
  private static final double[] TIED_TOO = {0.9, 1.0, 0.8, 1.1, 0.7};

  @Tag("published")
  @Test
  void agreesWithPublishedValuesWithoutTies() {
    RankTest test = RankTest.between(WelchTest.BEFORE, WelchTest.AFTER);
    assertThat(test.above()).isEqualTo(78);
    assertThat(test.probability()).isCloseTo(0.000182823712, within(1e-11));
    assertThat(RankTest.between(WelchTest.AFTER, WelchTest.BEFORE).above()).isEqualTo(2);
  }

  @Tag("published")
  @Test
  void agreesWithPublishedValuesWithTies() {
    RankTest test = RankTest.between(TIED, TIED_TOO);
    assertThat(test.above()).isEqualTo(23);
    assertThat(test.probability()).isCloseTo(0.165024534215, within(1e-9));
  }

  /** The normal approximation against the exact count for twenty values a side. */
  @Tag("identity")
  @Test
  void exactAndApproximateProbabilitiesMeet() {
    double[] first = IntStream.range(0, 20).mapToDouble(i -> i + 3.5).toArray();
    double[] second = IntStream.range(0, 20).mapToDouble(i -> i).toArray();
    double above = RankTest.between(first, second).above();
    assertThat(RankTest.asymptotic(above, first, second))
        .isCloseTo(RankTest.exact(above, 20, 20), within(0.003));
  }

  @Test
  void valuesThatAreAllEqualDifferInNothing() {
    assertThat(RankTest.between(new double[] {1, 1}, new double[] {1, 1}).probability())
        .isEqualTo(1);
  }
}
