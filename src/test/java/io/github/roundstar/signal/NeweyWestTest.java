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

/** Errors stay honest when one sample follows from the one before. */
class NeweyWestTest {
  /** statsmodels 0.13.5, OLS with cov_type HAC; the line 0.01 t plus the autoregression. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # lags, se(a),   se(b),      corrected: se(a), se(b)
          0,  0.17550332, 0.00075900, 0.17638747, 0.00076283
          4,  0.29489416, 0.00123690, 0.29637978, 0.00124313
          10, 0.31950405, 0.00127664, 0.32111365, 0.00128307
          """)
  void agreesWithStatsmodels(
      int lag, double constant, double slope, double constantCorrected, double slopeCorrected) {
    LinearFit fit = lineFit();
    Covariance plain = NeweyWest.covariance(fit.design(), fit.residuals(), lag);
    Covariance corrected = NeweyWest.covarianceCorrected(fit.design(), fit.residuals(), lag);
    assertThat(plain.standardError(0)).isCloseTo(constant, within(5e-9));
    assertThat(plain.standardError(1)).isCloseTo(slope, within(5e-9));
    assertThat(corrected.standardError(0)).isCloseTo(constantCorrected, within(5e-9));
    assertThat(corrected.standardError(1)).isCloseTo(slopeCorrected, within(5e-9));
  }

  /** The rule's value as statsmodels documents it for cov_hac. */
  @Test
  @Tag("published")
  void ruleGivesFourLagsForTwoHundredSamples() {
    assertThat(NeweyWest.ruleLag(200)).isEqualTo(4);
    assertThat(NeweyWest.ruleLag(3)).isEqualTo(1);
    assertThat(NeweyWest.ruleLag(1)).isZero();
  }

  @Test
  @Tag("identity")
  void movingSumsEqualTheWeightedSumOverLags() {
    double[][] scores = {KnownSeries.autoregression(), KnownSeries.unitNoise(200)};
    double[][] sum = NeweyWest.sum(scores, 7);
    for (int i = 0; i < 2; i++) {
      for (int j = 0; j < 2; j++) {
        double expected = 0;
        for (int t = 0; t < 200; t++) {
          for (int u = Math.max(0, t - 7); u <= Math.min(199, t + 7); u++) {
            expected += (1 - Math.abs(t - u) / 8.0) * scores[i][t] * scores[j][u];
          }
        }
        assertThat(sum[i][j]).isCloseTo(expected, within(1e-11));
      }
    }
  }

  /** Asymptotic inflation (1 + 0.6) / (1 - 0.6) = 4 of the variance of an autoregression's mean. */
  @Test
  @Tag("identity")
  @Tag("slow")
  void longRunVarianceOfAnAutoregressionIsFourTimesItsVariance() {
    Random random = new Random(11);
    double[] series = new double[200_000];
    for (int i = 1; i < series.length; i++) {
      series[i] = 0.6 * series[i - 1] + random.nextGaussian();
    }
    double variance = NeweyWest.longRunVariance(series, 0);
    assertThat(variance).isCloseTo(1 / (1 - 0.36), within(0.02));
    assertThat(NeweyWest.longRunVariance(series, NeweyWest.plugInLag(series)) / variance)
        .isCloseTo(4, within(0.16));
    assertThat(NeweyWest.longRunVariance(series) / variance).isCloseTo(4, within(0.1));
  }

  /** Autocovariances about the mean, divisor n, with Bartlett's weights, one by one. */
  @Tag("identity")
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 6})
  void longRunVarianceIsTheWeightedSumOfAutocovariances(int lag) {
    double[] series = KnownSeries.autoregression();
    double mean = Arrays.stream(series).average().orElseThrow();
    double expected = 0;
    for (int l = -lag; l <= lag; l++) {
      double product = 0;
      for (int t = Math.max(0, l); t < Math.min(200, 200 + l); t++) {
        product += (series[t] - mean) * (series[t - l] - mean);
      }
      expected += (1 - Math.abs(l) / (lag + 1.0)) * product / 200;
    }
    assertThat(NeweyWest.longRunVariance(series, lag)).isCloseTo(expected, within(1e-12));
  }

  /**
   * Andrews and Monahan (1992), Econometrica 60, 953, step by step: filter with the lag-1
   * autocorrelation, not beyond 0.97; sum over lags by pairs; divide by (1 - r) squared. Of n - 1
   * filtered samples it is a sum over n.
   */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource({"0.6", "-0.6", "0.2", "0.995", "-0.999"})
  void prewhitenedVarianceIsTheRecipesByDirectSums(double coefficient) {
    double[] series = autoregression(300, coefficient);
    double[] centred = centred(series);
    double[][] expected = recipe(centred);
    assertThat(NeweyWest.longRunVariance(series))
        .isCloseTo(expected[0][0] / 300, within(1e-9 * expected[0][0]));
    double[] other = centred(KnownSeries.unitNoise(300));
    double[][] both = recipe(centred, other);
    double[][] sum = NeweyWest.prewhitenedSum(new double[][] {centred, other});
    for (int i = 0; i < 2; i++) {
      assertThat(sum[i]).containsExactly(both[i], within(1e-9 * both[0][0]));
    }
  }

  private static double[] autoregression(int n, double coefficient) {
    double[] series = KnownSeries.unitNoise(n);
    for (int i = 1; i < n; i++) {
      series[i] += coefficient * series[i - 1];
    }
    return series;
  }

  private static double[] centred(double[] series) {
    double mean = Arrays.stream(series).average().orElseThrow();
    return Arrays.stream(series).map(x -> x - mean).toArray();
  }

  private static double[][] recipe(double[]... scores) {
    int n = scores[0].length;
    double r = Arrays.stream(scores).mapToDouble(Autocorrelation::lag1).average().orElseThrow();
    double filter = Math.abs(r) > 0.97 ? Math.copySign(0.97, r) : r;
    double[][] rest = new double[scores.length][n - 1];
    int lag = 0;
    for (int j = 0; j < scores.length; j++) {
      double[] score = scores[j];
      Arrays.setAll(rest[j], t -> score[t + 1] - filter * score[t]);
      lag = Math.max(lag, NeweyWest.plugInLag(rest[j]));
    }
    double[][] sum = new double[scores.length][scores.length];
    for (int i = 0; i < scores.length; i++) {
      for (int j = 0; j < scores.length; j++) {
        for (int t = 0; t < n - 1; t++) {
          for (int u = Math.max(0, t - lag); u <= Math.min(n - 2, t + lag); u++) {
            sum[i][j] += (1 - Math.abs(t - u) / (lag + 1.0)) * rest[i][t] * rest[j][u];
          }
        }
        sum[i][j] *= n / (n - 1.0) / Math.pow(1 - filter, 2);
      }
    }
    return sum;
  }

  /**
   * Andrews (1991), equations 6.2 and 6.4, worked out in NumPy 2.4.6 on autoregressions of 200
   * samples: 1.1447 (4 r^2 n / ((1 - r)^2 (1 + r)^2))^(1/3) is 10.249, 11.294, 4.673, 27.541,
   * 19.521.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({"0.6, 10", "-0.6, 11", "0.3, 4", "0.9, 27", "-0.8, 19"})
  void plugInLagIsAndrewss(double coefficient, int lag) {
    assertThat(NeweyWest.plugInLag(autoregression(200, coefficient))).isEqualTo(lag);
  }

  @Test
  void lengthsAndEmptySeriesAreRefused() {
    LinearFit fit = lineFit();
    assertThatThrownBy(() -> NeweyWest.covariance(fit.design(), new double[199], 1))
        .hasMessage("residuals has 199 of 200");
    assertThatThrownBy(() -> NeweyWest.ruleLag(0)).hasMessageContaining("at least 1");
  }

  @Test
  void longRunVarianceOfShortOrSteadySeriesIsFinite() {
    assertThat(NeweyWest.longRunVariance(new double[] {2, 2, 2})).isZero();
    assertThat(NeweyWest.longRunVariance(new double[] {1, 3})).isBetween(0.0, 10.0);
    assertThatThrownBy(() -> NeweyWest.longRunVariance(new double[] {1}))
        .hasMessageContaining("at least 2");
  }

  @Test
  void plugInLagGrowsWithTheCorrelation() {
    assertThat(NeweyWest.plugInLag(KnownSeries.unitNoise(200))).isEqualTo(4);
    // 1.1447 (alpha n)^(1/3) with r = 0.6: alpha = 3.5156, n = 200
    assertThat(NeweyWest.plugInLag(KnownSeries.autoregression())).isBetween(9, 10);
    double[] slow = new double[200];
    for (int i = 0; i < 200; i++) {
      slow[i] = Math.sin(i / 30.0);
    }
    assertThat(NeweyWest.plugInLag(slow)).isEqualTo(100);
    assertThat(NeweyWest.plugInLag(new double[] {1, 1, 1})).isEqualTo(1);
  }

  @Test
  void negativeLagIsRefused() {
    assertThatThrownBy(() -> NeweyWest.longRunVariance(new double[] {1, 2}, -1))
        .hasMessage("lag is -1, must be at least 0");
  }

  private static LinearFit lineFit() {
    double[] seconds = new double[200];
    double[] values = KnownSeries.autoregression();
    for (int i = 0; i < 200; i++) {
      seconds[i] = 2.0 * i;
      values[i] += 0.01 * seconds[i];
    }
    return LeastSquares.withConstant(200, seconds).orElseThrow().fit(values);
  }
}
