package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The fast periodogram is the slow one, and both are what Astropy computes. */
class PeriodogramTest {
  private static final FrequencyGrid GRID = new FrequencyGrid(0.0025, 0.0975 / 4000, 4001);

  /** astropy.timeseries.LombScargle 5.2.1, fit_mean=True, on the shared uneven series. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # period [s], p,              p weighted
          200,  0.000358276613, 0.000020887085
          97,   0.876065059263, 0.871789598846
          96,   0.871078009571, 0.867941988018
          60,   0.004329806795, 0.008092298526
          41.3, 0.066188411827, 0.075583129196
          20,   0.000545247014, 0.000678642317
          """)
  void powersAgreeWithAstropy(double periodSeconds, double plain, double weighted) {
    double frequency = 1 / periodSeconds;
    Series series = KnownSeries.unevenlySampled();
    Periodogram equal = Periodogram.of(series, new FrequencyGrid(frequency, 1e-4, 50));
    Periodogram unequal =
        Periodogram.weighted(
            series, KnownSeries.unevenWeights(), new FrequencyGrid(frequency, 1e-4, 50));
    assertThat(equal.direct(frequency).power()).isCloseTo(plain, within(6e-13));
    assertThat(unequal.direct(frequency).power()).isCloseTo(weighted, within(6e-13));
    assertThat(equal.power(0)).isCloseTo(plain, within(1e-8));
    assertThat(unequal.power(0)).isCloseTo(weighted, within(1e-8));
  }

  /** Three-parameter least squares in NumPy at 1/97 Hz, plain and weighted. */
  @Test
  @Tag("published")
  void coefficientsAgreeWithLeastSquares() {
    Series series = KnownSeries.unevenlySampled();
    Sinusoid plain = Periodogram.of(series, GRID).direct(1 / 97.0);
    assertThat(plain.offset()).isCloseTo(1.12078805, within(5e-9));
    assertThat(plain.sine()).isCloseTo(2.386379642068, within(1e-11));
    assertThat(plain.cosine()).isCloseTo(1.000910792861, within(1e-11));
    assertThat(plain.amplitude()).isCloseTo(2.587784807773, within(1e-11));
    Sinusoid weighted =
        Periodogram.weighted(series, KnownSeries.unevenWeights(), GRID).direct(1 / 97.0);
    assertThat(weighted.offset()).isCloseTo(1.12580047, within(5e-9));
    assertThat(weighted.sine()).isCloseTo(2.348191266868, within(1e-11));
    assertThat(weighted.cosine()).isCloseTo(1.051196876483, within(1e-11));
    assertThat(weighted.amplitude()).isCloseTo(2.572745051287, within(1e-11));
  }

  /** Maximum found with Astropy, on this grid and off it. */
  @Test
  @Tag("published")
  void peakIsFoundOnAndOffTheGrid() {
    Periodogram periodogram = Periodogram.of(KnownSeries.unevenlySampled(), GRID);
    int highest = periodogram.highest(0, periodogram.size());
    assertThat(highest).isEqualTo(321);
    assertThat(periodogram.frequencyHz(321)).isCloseTo(0.010324375, within(1e-15));
    assertThat(periodogram.power(321)).isCloseTo(0.8760227201, within(1e-9));
    Sinusoid peak = periodogram.peak();
    assertThat(peak.frequencyHz()).isCloseTo(0.0103138649, within(1e-10));
    assertThat(peak.periodSeconds()).isCloseTo(96.95686440, within(1e-6));
    assertThat(peak.power()).isCloseTo(0.8760750170, within(5e-11));
  }

  /** Astropy on yearly sunspot numbers 1700-2008 (NOAA/NGDC); years in place of seconds. */
  @Test
  @Tag("published")
  void sunspotCycleIsFound() {
    double[] numbers = NumberFile.read("sunspots-1700-2008.csv");
    double[] years = new double[numbers.length];
    Arrays.setAll(years, i -> 1700 + i);
    Series series = Series.of(years, numbers);
    Periodogram periodogram = Periodogram.of(series, FrequencyGrid.between(0.01, 0.2, 5000));
    Sinusoid peak = periodogram.peak();
    assertThat(peak.periodSeconds()).isCloseTo(10.99916, within(5e-6));
    assertThat(peak.frequencyHz()).isCloseTo(0.0909160163, within(1e-9));
    assertThat(peak.power()).isCloseTo(0.2764516941, within(5e-11));
    assertThat(peak.amplitude()).isCloseTo(29.98195449, within(1e-5));
    double[] periods = {10.0, 10.5, 11.0, 11.05, 11.1, 12.0};
    double[] powers = {
      0.168858435363, 0.171918409878, 0.276447097721, 0.260103847956, 0.217238959977, 0.067032871688
    };
    for (int i = 0; i < periods.length; i++) {
      assertThat(periodogram.direct(1 / periods[i]).power()).isCloseTo(powers[i], within(6e-13));
    }
  }

  @Tag("identity")
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 50, 1023, 1024, 5000})
  void fastSumsEqualDirectSums(int count) {
    Series series = irregular(400, 60);
    assertFastEqualsDirect(series, new FrequencyGrid(1e-4, 0.4 / count, count), 1e-9);
  }

  @Test
  @Tag("identity")
  void fastSumsEqualDirectSumsOnTheUnevenSeries() {
    assertFastEqualsDirect(KnownSeries.unevenlySampled(), GRID, 1e-9);
    assertFastEqualsDirect(KnownSeries.unevenlySampled(), new FrequencyGrid(0, 1e-5, 4000), 1e-7);
  }

  /** Three nights weeks apart: 75 days in all, of which a day holds samples. */
  @Test
  @Tag("identity")
  @Tag("slow")
  void fastSumsEqualDirectSumsAcrossLongGaps() {
    assertFastEqualsDirect(irregular(900, 3_200_000), FrequencyGrid.between(1e-4, 0.1, 6000), 1e-7);
  }

  @Test
  @Tag("identity")
  void fewSamplesStillAgree() {
    for (int n = 4; n < 12; n++) {
      assertFastEqualsDirect(irregular(n, 100), new FrequencyGrid(1e-3, 1e-4, 3000), 1e-7);
    }
  }

  /** The same three-parameter fit by regression on its columns. */
  @Test
  @Tag("identity")
  void powerIsTheExplainedShareOfARegression() {
    Series series = KnownSeries.unevenlySampled();
    Periodogram periodogram = Periodogram.of(series, new FrequencyGrid(1e-4, 1.7e-3, 60));
    for (int j = 0; j < periodogram.size(); j++) {
      double omega = 2 * Math.PI * periodogram.frequencyHz(j);
      double[] cosine = Arrays.stream(series.seconds()).map(t -> Math.cos(omega * t)).toArray();
      double[] sine = Arrays.stream(series.seconds()).map(t -> Math.sin(omega * t)).toArray();
      LinearFit fit =
          LeastSquares.withConstant(series.size(), cosine, sine).orElseThrow().fit(series.values());
      assertThat(periodogram.power(j)).isCloseTo(fit.rSquared(), within(1e-10));
      assertThat(periodogram.cosine(j)).isCloseTo(fit.coefficient(1), within(1e-7));
      assertThat(periodogram.sine(j)).isCloseTo(fit.coefficient(2), within(1e-7));
      assertThat(periodogram.amplitude(j))
          .isCloseTo(Math.hypot(fit.coefficient(1), fit.coefficient(2)), within(1e-7));
    }
  }

  @Test
  void largeTimesAndValuesChangeNothing() {
    Series near = irregular(200, 60);
    double[] seconds = Arrays.stream(near.seconds()).map(t -> t + 1e6).toArray();
    double[] values = Arrays.stream(near.values()).map(v -> v + 1e6).toArray();
    FrequencyGrid grid = new FrequencyGrid(1e-3, 1e-4, 500);
    Periodogram expected = Periodogram.of(near, grid);
    Periodogram moved = Periodogram.of(Series.of(seconds, values), grid);
    for (int j = 0; j < grid.count(); j++) {
      assertThat(moved.power(j)).isCloseTo(expected.power(j), within(1e-8));
    }
  }

  @Test
  void whatCannotBeFittedHasNoPower() {
    double[] seconds = new double[40];
    Arrays.setAll(seconds, i -> 2.0 * i);
    double[] alternating = new double[40];
    Arrays.setAll(alternating, i -> i % 2);
    Periodogram even =
        Periodogram.of(Series.of(seconds, alternating), new FrequencyGrid(0, 0.25, 3));
    assertThat(even.power(0)).isZero();
    assertThat(even.power(1)).isZero();
    assertThat(even.power(2)).isZero();
    Periodogram steady =
        Periodogram.of(Series.of(seconds, new double[40]), new FrequencyGrid(0.01, 0.01, 5));
    assertThat(steady.peak().power()).isZero();
    Periodogram lone =
        Periodogram.of(
            Series.of(new double[] {1}, new double[] {5}), new FrequencyGrid(0.01, 0.01, 5));
    assertThat(lone.power(3)).isZero();
    assertThat(lone.amplitude(3)).isZero();
  }

  @Test
  @Tag("identity")
  void otherValuesAtTheSameTimesAreAsGoodAsAFreshStart() {
    Series series = KnownSeries.unevenlySampled();
    double[] weights = KnownSeries.unevenWeights();
    double[] constant = new double[series.size()];
    Periodogram again =
        Periodogram.weighted(Series.of(series.seconds(), constant), weights, GRID)
            .withValues(series.values());
    Periodogram fresh = Periodogram.weighted(series, weights, GRID);
    for (int j = 0; j < GRID.count(); j++) {
      assertThat(again.power(j)).isEqualTo(fresh.power(j));
      assertThat(again.cosine(j)).isEqualTo(fresh.cosine(j));
      assertThat(again.sine(j)).isEqualTo(fresh.sine(j));
    }
    assertThatThrownBy(() -> fresh.withValues(new double[3])).hasMessageContaining("values");
  }

  @Test
  void weightsAndSeriesAreChecked() {
    Series series = irregular(4, 60);
    FrequencyGrid grid = new FrequencyGrid(0.01, 0.01, 5);
    assertThatThrownBy(() -> Periodogram.weighted(series, new double[] {1, -1, 1, 1}, grid))
        .hasMessage("weight [1] = -1.0 is negative");
    assertThatThrownBy(() -> Periodogram.weighted(series, new double[4], grid))
        .hasMessageContaining("sum of the weights");
    assertThatThrownBy(() -> Periodogram.weighted(series, new double[3], grid))
        .hasMessage("weights has 3 of 4");
    Series nothing = Series.of(new double[0], new double[0]);
    assertThatThrownBy(() -> Periodogram.of(nothing, grid))
        .hasMessageContaining("number of samples is 0");
  }

  private static void assertFastEqualsDirect(Series series, FrequencyGrid grid, double tolerance) {
    double[] weights = new double[series.size()];
    Random random = new Random(2);
    Arrays.setAll(weights, i -> 0.2 + random.nextDouble());
    Periodogram fast = Periodogram.weighted(series, weights, grid);
    for (int j = 0; j < grid.count(); j++) {
      Sinusoid direct = fast.direct(grid.hertz(j));
      assertThat(fast.power(j)).isCloseTo(direct.power(), within(tolerance));
    }
  }

  /** Random steps of 3 s on average, two long gaps, a sinusoid of 50 s in noise. */
  private static Series irregular(int n, double gapSeconds) {
    Random random = new Random(n);
    double[] seconds = new double[n];
    double[] values = new double[n];
    double now = 0;
    for (int i = 0; i < n; i++) {
      now += 6 * random.nextDouble() + 1e-3 + (i == n / 3 || i == n / 2 ? gapSeconds : 0);
      seconds[i] = now;
      values[i] = 7 + Math.sin(now / 8) + random.nextGaussian();
    }
    return Series.of(seconds, values);
  }
}
