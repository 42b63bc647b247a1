package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Noise passes a height as often as the formulas say, or a little less. */
class FalseAlarmTest {
  private static final double TIME_VARIANCE = 15229.222201553372;

  /** Baluev 2008 as in astropy 5.2.1 (timeseries, _statistics.py): shared uneven series, 0.1 Hz. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "0.10, 0.211284106317",
    "0.15, 0.010485244498",
    "0.20, 3.611504818e-04",
    "0.30, 1.912804344e-07"
  })
  void oneSeriesAgreesWithAstropy(double power, double expected) {
    assertThat(FalseAlarm.ofPower(power, 120, 0.1, TIME_VARIANCE))
        .isCloseTo(expected, within(5e-10 * expected));
  }

  @Tag("published")
  @ParameterizedTest
  @CsvSource({"0.1, 0.1134714514", "0.01, 0.1507331189", "0.001, 0.1852914318"})
  void powerAtIsTheInverse(double probability, double power) {
    assertThat(FalseAlarm.powerAt(probability, 120, 0.1, TIME_VARIANCE))
        .isCloseTo(power, within(5e-11));
  }

  @Test
  @Tag("identity")
  void powerAtHoldsFarOutAndForFewSamples() {
    for (double probability : new double[] {0.9, 1e-3, 1e-12, 1e-40}) {
      for (int samples : new int[] {5, 50, 5000}) {
        double power = FalseAlarm.powerAt(probability, samples, 1e-4, 1e6);
        double back = FalseAlarm.ofPower(power, samples, 1e-4, 1e6);
        assertThat(power > 1 - 1e-9 || Math.abs(back / probability - 1) < 1e-3).isTrue();
      }
    }
  }

  @Test
  @Tag("identity")
  void oneRunOfManySamplesIsTheOneSeriesForm() {
    int n = 4_000_000;
    for (double z = 4; z < 20; z += 2) {
      double one = FalseAlarm.ofPower(2 * z / n, n, 0.1, 1e6);
      assertThat(FalseAlarm.ofSum(z, 1, 0.1, 1e6)).isCloseTo(one, within(1e-4 * one));
    }
  }

  /**
   * Rice's formula for the sum: a gamma process of shape R, each component of mean square slope 4
   * pi^2 var(t), crosses z upward at the rate sqrt(4 pi var(t) z) times its density there. Density
   * and tail by Commons Math.
   */
  @Tag("identity")
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 12})
  void sumIsCrossedAsOftenAsRicesFormulaSays(int runs) {
    GammaDistribution gamma = new GammaDistribution(null, runs, 1);
    for (double z = 0.5; z < 40; z *= 1.7) {
      double crossings = 0.08 * Math.sqrt(4 * Math.PI * 2e4 * z) * gamma.density(z);
      double below = gamma.cumulativeProbability(z) * Math.exp(-crossings);
      assertThat(FalseAlarm.ofSum(z, runs, 0.08, 2e4)).isCloseTo(1 - below, within(1e-12));
    }
  }

  @Test
  @Tag("identity")
  @Tag("slow")
  void oneRunPassesAsOftenAsSaid() {
    assertRate(new int[] {120}, 5.5, 7.5);
  }

  @Test
  @Tag("identity")
  @Tag("slow")
  void sumOfThreeUnlikeRunsPassesAsOftenAsSaid() {
    assertRate(new int[] {60, 90, 150}, 9.5, 12);
  }

  /**
   * Simulated: white noise of known size on uneven times, powers summed over the runs. The share of
   * trials that pass lies at or under the bound, and not far under it.
   */
  private static void assertRate(int[] sizes, double... heights) {
    Random random = new Random(20);
    int trials = 3000;
    int[] passed = new int[heights.length];
    double[][] seconds =
        Arrays.stream(sizes).mapToObj(n -> times(n, random)).toArray(double[][]::new);
    double variance =
        Arrays.stream(seconds).mapToDouble(FalseAlarmTest::variance).average().orElseThrow();
    FrequencyGrid grid = FrequencyGrid.between(0.01, 0.11, 400);
    for (int trial = 0; trial < trials; trial++) {
      double highest = highestSum(seconds, grid, random);
      for (int k = 0; k < heights.length; k++) {
        passed[k] += highest > heights[k] ? 1 : 0;
      }
    }
    for (int k = 0; k < heights.length; k++) {
      double bound = FalseAlarm.ofSum(heights[k], sizes.length, 0.1, variance);
      double chance = 3 * Math.sqrt(bound * (1 - bound) / trials);
      assertThat(bound).isBetween(0.005, 0.5);
      assertThat(passed[k] / (double) trials).isBetween(0.8 * bound - chance, bound + chance);
    }
  }

  private static double highestSum(double[][] seconds, FrequencyGrid grid, Random random) {
    double[] sum = new double[grid.count()];
    for (double[] times : seconds) {
      double[] noise = new double[times.length];
      Arrays.setAll(noise, i -> random.nextGaussian());
      Periodogram periodogram = Periodogram.of(Series.of(times, noise), grid);
      double squares = variance(noise) * times.length;
      for (int j = 0; j < sum.length; j++) {
        sum[j] += periodogram.power(j) * squares / 2;
      }
    }
    return Arrays.stream(sum).max().orElseThrow();
  }

  private static double[] times(int n, Random random) {
    double[] seconds = new double[n];
    Arrays.setAll(seconds, i -> 3 * i + 2 * random.nextDouble());
    return seconds;
  }

  private static double variance(double[] values) {
    double mean = Arrays.stream(values).average().orElseThrow();
    return Arrays.stream(values).map(v -> (v - mean) * (v - mean)).average().orElseThrow();
  }

  @Test
  void noPeakIsNoSurpriseAndATallOneKeepsItsDigits() {
    assertThat(FalseAlarm.ofSum(0, 3, 0.1, 1e6)).isEqualTo(1);
    assertThat(FalseAlarm.ofPower(0, 120, 0.1, 1e4)).isEqualTo(1);
    assertThat(FalseAlarm.ofPower(1, 120, 0.1, 1e4)).isZero();
    assertThat(FalseAlarm.ofSum(200, 2, 0.1, 1e6)).isBetween(1e-90, 1e-70);
    assertThat(FalseAlarm.ofPower(0.9, 120, 0.1, 1e4)).isBetween(1e-60, 1e-50);
  }

  @Test
  void nonsenseIsRefused() {
    assertThatThrownBy(() -> FalseAlarm.ofPower(1.1, 120, 0.1, 1e4)).hasMessageContaining("1.1");
    assertThatThrownBy(() -> FalseAlarm.ofPower(0.5, 3, 0.1, 1e4)).hasMessageContaining("least 4");
    assertThatThrownBy(() -> FalseAlarm.ofSum(-1, 1, 0.1, 1e4)).hasMessageContaining("-1.0");
    assertThatThrownBy(() -> FalseAlarm.ofSum(1, 0, 0.1, 1e4)).hasMessageContaining("runs");
    assertThatThrownBy(() -> FalseAlarm.powerAt(0, 120, 0.1, 1e4)).hasMessageContaining("0.0");
    assertThatThrownBy(() -> FalseAlarm.powerAt(1, 120, 0.1, 1e4)).hasMessageContaining("(0, 1)");
    assertThatThrownBy(() -> FalseAlarm.powerAt(0.1, 4, 0.1, 1e4)).hasMessageContaining("least 5");
  }
}
