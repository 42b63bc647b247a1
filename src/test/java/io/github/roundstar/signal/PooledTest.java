package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import java.util.ArrayList;
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
