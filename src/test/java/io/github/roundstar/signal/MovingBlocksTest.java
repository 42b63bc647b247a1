package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Resampling in blocks: closed forms and a series small enough to write out every resample. */
class MovingBlocksTest {
  private static final double[] FIRST = {0.3, -0.5, 0.2, 0.8, -0.1, 0.4};
  private static final double[] SECOND = {0.1, -0.2, 0.15, 0.05, -0.1, 0.2};

  /**
   * Künsch (1989), Annals of Statistics 17, 1217: closed form of the bootstrap variance, worked out
   * in numpy on the portable first-order autoregressive series.
   */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # block, mean of resamples, standard error of the mean
          1,  -0.10778490759, 0.090424925723
          5,  -0.13052881364, 0.150633136486
          10, -0.14528614906, 0.166782192407
          20, -0.14065832392, 0.167060281194
          """)
  void agreesWithTheClosedForm(int length, double mean, double error) {
    double[] series = KnownSeries.autoregression();
    MovingBlocks blocks = new MovingBlocks(series.length, length);
    assertThat(blocks.resampledMean(series)).isCloseTo(mean, within(1e-10));
    assertThat(blocks.standardErrorOfMean(series)).isCloseTo(error, within(1e-10));
  }

  @Tag("identity")
  @ParameterizedTest
  @CsvSource({"1, 1.64695102472, 0.134319480628", "10, 1.61533773894, 0.182959267692"})
  void agreesWithTheClosedFormOfTheMeanSquare(int length, double mean, double error) {
    double[] squares = squares(KnownSeries.autoregression());
    MovingBlocks blocks = new MovingBlocks(squares.length, length);
    assertThat(blocks.resampledMean(squares)).isCloseTo(mean, within(1e-10));
    assertThat(blocks.standardErrorOfMean(squares)).isCloseTo(error, within(1e-10));
  }

  /** All sixteen resamples of six samples, written out by hand (numpy). */
  @Tag("identity")
  @Test
  void listsEveryResampleOfAShortSeries() {
    double[] rms = rms(FIRST);
    Arrays.sort(rms);
    assertThat(rms).hasSize(16);
    assertThat(rms[0]).isCloseTo(0.355902608, within(1e-9));
    assertThat(rms[15]).isCloseTo(0.556776436, within(1e-9));
    assertThat(Arrays.stream(rms).average().orElseThrow()).isCloseTo(0.4811216988, within(1e-10));
    assertThat(Quantile.of(rms, 0.025)).isCloseTo(0.38079987, within(1e-8));
    assertThat(Quantile.of(rms, 0.5)).isCloseTo(0.48979158, within(1e-8));
    assertThat(Quantile.of(rms, 0.975)).isCloseTo(0.54992895, within(1e-8));
  }

  @Tag("identity")
  @Test
  void differencesOfTwoNightsAgreeWithAllPairs() {
    double[] differences =
        Arrays.stream(rms(FIRST))
            .flatMap(x -> Arrays.stream(rms(SECOND)).map(y -> x - y))
            .toArray();
    assertThat(differences).hasSize(256);
    assertThat(Arrays.stream(differences).average().orElseThrow())
        .isCloseTo(0.3447653562, within(1e-10));
    assertThat(Quantile.of(differences, 0.025)).isCloseTo(0.21596214, within(1e-8));
    assertThat(Quantile.of(differences, 0.5)).isCloseTo(0.35048371, within(1e-8));
    assertThat(Quantile.of(differences, 0.975)).isCloseTo(0.42648145, within(1e-8));
  }

  /** Random resamples against the closed form: 4000 of them know the error to 1.1 %. */
  @Tag("identity")
  @Test
  void randomResamplesScatterAsTheClosedFormSays() {
    double[] series = KnownSeries.autoregression();
    MovingBlocks blocks = new MovingBlocks(series.length, 10);
    double[] means = blocks.resampled(new double[][] {series}, 4000, 7, mean -> mean[0]);
    double centre = Arrays.stream(means).average().orElseThrow();
    double scatter =
        Math.sqrt(Arrays.stream(means).map(m -> (m - centre) * (m - centre)).average().orElse(0));
    assertThat(scatter).isCloseTo(0.166782192407, within(0.006));
    assertThat(means)
        .isEqualTo(blocks.resampled(new double[][] {series}, 4000, 7, mean -> mean[0]));
  }

  /** The mean of a difference is the difference of the means, block by block. */
  @Tag("identity")
  @Test
  void sameBlocksAreDrawnInAllColumns() {
    MovingBlocks blocks = new MovingBlocks(6, 2);
    double[] difference = new double[6];
    Arrays.setAll(difference, i -> 2 * FIRST[i] - SECOND[i]);
    for (int draws : new int[] {200, 40}) {
      double[] ofDifference = blocks.resampled(new double[][] {difference}, draws, 3, m -> m[0]);
      double[] ofBoth =
          blocks.resampled(new double[][] {FIRST, SECOND}, draws, 3, m -> 2 * m[0] - m[1]);
      assertThat(ofBoth).hasSize(Math.min(draws, 125)).containsExactly(ofDifference, within(1e-14));
      double[] third =
          blocks.resampled(new double[][] {SECOND, SECOND, FIRST}, draws, 3, m -> 2 * m[2] - m[1]);
      assertThat(third).containsExactly(ofDifference, within(1e-14));
    }
  }

  /** As many draws as different resamples: each once, their mean the closed form's. */
  @Tag("identity")
  @Test
  void asManyDrawsAsResamplesAreAllOfThem() {
    MovingBlocks blocks = new MovingBlocks(6, 3);
    double[] all = blocks.resampled(new double[][] {FIRST}, 16, 1, m -> m[0]);
    assertThat(Arrays.stream(all).average().orElseThrow())
        .isCloseTo(blocks.resampledMean(FIRST), within(1e-15));
    assertThat(blocks.resampled(new double[][] {FIRST}, 15, 1, m -> m[0])).hasSize(15);
  }

  @Test
  void oneBlockMayBeTheWholeSeries() {
    MovingBlocks whole = new MovingBlocks(6, 6);
    assertThat(whole.resampledMean(FIRST)).isCloseTo(1.1 / 6, within(1e-15));
    assertThat(whole.standardErrorOfMean(FIRST)).isZero();
  }

  @Test
  void blocksLongerThanTheSeriesAreRefused() {
    assertThatThrownBy(() -> new MovingBlocks(5, 6)).hasMessageContaining("blocks of 6 in 5");
    assertThatThrownBy(() -> new MovingBlocks(5, 0)).hasMessageContaining("blocks of 0 in 5");
    assertThatThrownBy(() -> new MovingBlocks(5, 2).resampledMean(FIRST))
        .hasMessage("6 values, expected 5");
  }

  private static double[] rms(double[] series) {
    return new MovingBlocks(6, 3)
        .resampled(new double[][] {squares(series)}, 100, 1, mean -> Math.sqrt(mean[0]));
  }

  private static double[] squares(double[] values) {
    return Arrays.stream(values).map(v -> v * v).toArray();
  }
}
