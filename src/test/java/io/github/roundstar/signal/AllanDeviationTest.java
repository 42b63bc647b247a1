package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The deviation is the published one, and finds the wander and the noise that the fit finds. */
class AllanDeviationTest {
  private static final double[] NINE = {892, 809, 823, 798, 671, 644, 883, 903, 677};

  /** NIST SP 1065 (2008), section 12.4, tables 30 and 31: plain and overlapping. */
  @ParameterizedTest
  @Tag("published")
  @CsvSource({
    "1, 2.922319e-01, 2.922319e-01",
    "10, 9.965736e-02, 9.159953e-02",
    "100, 3.897804e-02, 3.241343e-02"
  })
  void isThatOfTheThousandPointSeries(int averaged, double plain, double overlapping) {
    // The series of the handbook is uniform between 0 and 1; unit noise is that times root 12.
    double[] uniform =
        Arrays.stream(KnownSeries.unitNoise(1000)).map(e -> e / Math.sqrt(12) + 0.5).toArray();
    assertThat(AllanDeviation.of(uniform, averaged)).isCloseTo(plain, within(5e-7 * plain));
    assertThat(AllanDeviation.overlapping(uniform, averaged))
        .isCloseTo(overlapping, within(5e-7 * overlapping));
  }

  /** The same handbook, the set of nine points. */
  @ParameterizedTest
  @Tag("published")
  @CsvSource({"1, 91.22945, 91.22945", "2, 115.8082, 85.95287"})
  void isThatOfTheNinePointSet(int averaged, double plain, double overlapping) {
    assertThat(AllanDeviation.of(NINE, averaged)).isCloseTo(plain, within(5e-5));
    assertThat(AllanDeviation.overlapping(NINE, averaged)).isCloseTo(overlapping, within(5e-6));
  }

  /** A closed form of the handbook: drift r gives r tau over root 2, whatever is averaged. */
  @Test
  @Tag("published")
  void driftGrowsWithTheTime() {
    double[] drift = new double[200];
    Arrays.setAll(drift, i -> 0.3 * i);
    for (int averaged : new int[] {1, 7, 40}) {
      assertThat(AllanDeviation.overlapping(drift, averaged))
          .isCloseTo(0.3 * averaged / Math.sqrt(2), within(1e-9));
    }
  }

  /**
   * Wander and noise of the likelihood fit foretell the deviation of the same series at every
   * length, within three times what 2000 values let it scatter.
   */
  @Test
  @Tag("identity")
  void isWhatTheFittedWanderAndNoiseForetell() {
    double[][] none = {};
    for (long seed = 1; seed <= 5; seed++) {
      WhiteningTest.WanderingSeries series =
          WhiteningTest.WanderingSeries.of(seed, 2000, 0.45, 0.05);
      WanderNoise fit =
          WanderNoise.fit(series.seconds(), new boolean[2000], series.values(), none).orElseThrow();
      // The values are a second apart on average.
      double walk = fit.noiseVariance() * fit.ratioPerSecond();
      for (int averaged : new int[] {1, 4, 16}) {
        double foretold = AllanDeviation.expected(fit.noiseVariance(), walk, averaged);
        assertThat(AllanDeviation.overlapping(series.values(), averaged) / foretold)
            .as("seed %d, %d averaged", seed, averaged)
            .isCloseTo(1, within(3 / Math.sqrt(2 * 2000.0 / averaged)));
      }
    }
  }
}
