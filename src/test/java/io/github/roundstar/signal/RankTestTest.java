package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
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

  /**
   * scipy.stats.mannwhitneyu 1.17.1, exact for forty values and fewer, then asymptotic: multiples
   * of 37 and of 53 modulo 101.
   */
  @Tag("published")
  @Test
  void countIsExactUpToFortyValues() {
    double[] first = IntStream.rangeClosed(1, 20).mapToDouble(i -> 37 * i % 101).toArray();
    RankTest forty = RankTest.between(first, multiplesOf53(20));
    assertThat(forty.above()).isEqualTo(191);
    assertThat(forty.probability()).isCloseTo(0.820148096319688, within(1e-13));
    RankTest more = RankTest.between(first, multiplesOf53(21));
    assertThat(more.above()).isEqualTo(211);
    assertThat(more.probability()).isCloseTo(0.9895950717766093, within(1e-9));
    RankTest few =
        RankTest.between(new double[] {1.1, 2.3, 3.8, 0.2, 5.9}, new double[] {2.9, 4.4, 6.1, 7.7});
    assertThat(few.above()).isEqualTo(3);
    assertThat(few.probability()).isCloseTo(1 / 9.0, within(1e-15));
    RankTest tied = RankTest.between(new double[] {1, 2, 2, 3}, new double[] {2, 2, 3, 4, 4});
    assertThat(tied.above()).isEqualTo(4.5);
    assertThat(tied.probability()).isCloseTo(0.19670560245894686, within(1e-12));
  }

  private static double[] multiplesOf53(int n) {
    return IntStream.rangeClosed(1, n).mapToDouble(i -> 53 * i % 101 + 0.5).toArray();
  }

  @Test
  void nothingIsRefused() {
    assertThatThrownBy(() -> RankTest.between(new double[0], new double[2]))
        .hasMessageContaining("at least 1");
  }

  @Test
  void valuesThatAreAllEqualDifferInNothing() {
    assertThat(RankTest.between(new double[] {1, 1}, new double[] {1, 1}).probability())
        .isEqualTo(1);
  }
}
