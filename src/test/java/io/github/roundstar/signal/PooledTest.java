package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Several estimates become one whose interval holds what they scatter. */
class PooledTest {
  private static Estimate of(double value, double error) {
    return Estimate.symmetric(value, 1.959964 * error);
  }

  @Test
  void oneIsItself() {
    Estimate only = new Estimate(3, 2, 5);
    assertThat(Pooled.of(List.of(only))).isEqualTo(only);
  }

  /** Weighted mean (3 / 1 + 4 / 0.25) / 5 and error sqrt(1 / 5), by hand. */
  @Test
  @Tag("identity")
  void thoseThatAgreeAreWeightedByTheirErrors() {
    Estimate pooled = Pooled.of(List.of(of(3, 1), of(4, 0.5)));
    assertThat(pooled.value()).isCloseTo(3.8, within(1e-12));
    assertThat(pooled.hi95() - 3.8).isCloseTo(1.959964 * Math.sqrt(0.2), within(1e-9));
  }

  /**
   * Errors of nothing leave the plain mean and Student's interval of the sample: values 1, 2, 4
   * have mean 7/3, deviation 1.5275, and t(0.975, 2) = 4.3027 of the usual tables.
   */
  @Test
  @Tag("published")
  void thoseWithoutErrorsGiveStudentsInterval() {
    Estimate pooled = Pooled.of(List.of(of(1, 1e-9), of(2, 1e-9), of(4, 1e-9)));
    assertThat(pooled.value()).isCloseTo(7.0 / 3, within(1e-6));
    assertThat(pooled.hi95() - pooled.value())
        .isCloseTo(4.3027 * 1.527525 / Math.sqrt(3), within(1e-3));
  }

  /**
   * Thirteen trials of a vaccine, logarithms of relative risks and their variances: Colditz et al.
   * (1994), J. Am. Med. Assoc. 271, 698. Paule and Mandel's variance between them, iterated, is
   * 0.31808244 by statsmodels 0.13.5; mean, error and Student's interval by SciPy 1.17.1, as is
   * Birge's ratio of 3.5569 for the fixed mean.
   */
  @Test
  @Tag("published")
  void thirteenTrialsArePooledAsPublished() {
    double[][] trials = {
      {-0.8893, 0.3256}, {-1.5854, 0.1946}, {-1.3481, 0.4154}, {-1.4416, 0.0200},
      {-0.2175, 0.0512}, {-0.7861, 0.0069}, {-1.6209, 0.2230}, {0.0120, 0.0040},
      {-0.4694, 0.0564}, {-1.3713, 0.0730}, {-0.3394, 0.0124}, {0.4459, 0.5325},
      {-0.0173, 0.0714}
    };
    List<Estimate> estimates =
        Arrays.stream(trials).map(trial -> of(trial[0], Math.sqrt(trial[1]))).toList();
    Estimate pooled = Pooled.of(estimates);
    assertThat(pooled.value()).isCloseTo(-0.7149703054, within(1e-9));
    // Variance 1 / sum of weights; what of it comes from the scatter has 12 degrees of freedom.
    assertThat(pooled.hi95() - pooled.value()).isCloseTo(0.3858395776, within(1e-9));
    assertThat(pooled.value() - pooled.lo95()).isCloseTo(0.3858395776, within(1e-9));
    Estimate fixed = Pooled.ofOneTruth(estimates);
    assertThat(fixed.value()).isCloseTo(-0.4321372401, within(1e-9));
    assertThat(fixed.hi95() - fixed.value()).isCloseTo(0.2828362296, within(1e-9));
  }

  /** An interval with unequal sides counts by its wider one, whichever that is. */
  @Test
  @Tag("identity")
  void widerSideCounts() {
    List<Estimate> wideAbove = List.of(new Estimate(3, 2.9, 3 + 1.959964), of(4, 0.5));
    List<Estimate> wideBelow = List.of(new Estimate(3, 3 - 1.959964, 3.1), of(4, 0.5));
    assertThat(Pooled.of(wideAbove).value()).isCloseTo(3.8, within(1e-12));
    assertThat(Pooled.of(wideBelow).value()).isCloseTo(3.8, within(1e-12));
    assertThat(Pooled.ofOneTruth(wideAbove).value()).isCloseTo(3.8, within(1e-12));
  }

  @Test
  void exactOnesThatAgreeStayAsTheyAreAndNoneAreRefused() {
    for (double value : new double[] {3, 0}) {
      List<Estimate> exact = List.of(of(value, 0), of(value, 0), of(value, 0));
      assertThat(Pooled.of(exact).value()).isCloseTo(value, within(1e-12));
      assertThat(Pooled.of(exact).hi95()).isCloseTo(value, within(1e-11));
      assertThat(Pooled.ofOneTruth(exact).hi95()).isCloseTo(value, within(1e-11));
    }
    Estimate one = of(2, 0.5);
    assertThat(Pooled.ofOneTruth(List.of(one)).hi95()).isCloseTo(one.hi95(), within(1e-12));
    assertThatThrownBy(() -> Pooled.of(List.of())).hasMessageContaining("at least 1");
    assertThatThrownBy(() -> Pooled.ofOneTruth(List.of())).hasMessageContaining("at least 1");
  }

  /** 3 and 4 with errors of 0.1: chi square 50 for one degree of freedom widens by root 50. */
  @Test
  @Tag("identity")
  void disagreementAboutOneNumberWidensTheInterval() {
    Estimate pooled = Pooled.ofOneTruth(List.of(of(3, 0.1), of(4, 0.1)));
    assertThat(pooled.value()).isCloseTo(3.5, within(1e-12));
    assertThat(pooled.hi95() - 3.5).isCloseTo(1.959964 * 0.5, within(1e-9));
    Estimate agreeing = Pooled.ofOneTruth(List.of(of(3, 0.1), of(3.05, 0.1)));
    assertThat(agreeing.hi95() - agreeing.value())
        .isCloseTo(1.959964 * 0.1 / Math.sqrt(2), within(1e-9));
  }

  @ParameterizedTest(name = "{0} runs that scatter by {1}")
  @Tag("identity")
  @Tag("slow")
  @CsvSource({"2, 0", "3, 0.5", "3, 3", "6, 1"})
  void intervalCovers(int runs, double scatter) {
    Random random = new Random(3);
    int covered = 0;
    for (int trial = 0; trial < 1000; trial++) {
      List<Estimate> estimates = new ArrayList<>();
      for (int run = 0; run < runs; run++) {
        double error = 0.5 + random.nextDouble();
        double value = scatter * random.nextGaussian() + error * random.nextGaussian();
        estimates.add(of(value, error));
      }
      covered += Pooled.of(estimates).covers(0) ? 1 : 0;
    }
    assertThat(covered).isBetween(880, 990);
  }
}
