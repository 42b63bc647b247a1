package io.github.roundstar.signal;

import java.util.Arrays;
import org.apache.commons.math3.stat.descriptive.moment.Variance;

/**
 * Variances that respect autocorrelation: Bartlett-weighted sums over lags 0 .. L of the products
 * of scores, weight 1 - l / (L + 1).
 *
 * <p>Computed as the mean square of moving sums over L + 1 scores, which is the same number, takes
 * the same time for every L and cannot come out negative.
 *
 * @see "Newey &amp; West (1987), Econometrica 55, 703"
 */
public final class NeweyWest {
  /** Bound on the prewhitening filter, as Andrews and Monahan set it. */
  private static final double STRONGEST = 0.97;

  private NeweyWest() {}

  /** The usual number of lags for n samples: floor(4 (n / 100)^(2/9)), at most n - 1. */
  public static int ruleLag(int n) {
    Check.atLeast("number of samples", n, 1);
    return Math.min(n - 1, (int) Math.floor(4 * Math.pow(n / 100.0, 2.0 / 9.0)));
  }

  /**
   * The number of lags that suits the autocorrelation at hand, never below {@link #ruleLag}: the
   * best one for an autoregression of first order with the lag-1 autocorrelation of {@code values}.
   *
   * @return at most half of the number of values, but for {@code ruleLag} on a very short series
   * @see "Andrews (1991), Econometrica 59, 817, equations 6.2 and 6.4"
   */
  public static int plugInLag(double[] values) {
    int n = values.length;
    double r = Autocorrelation.lag1(values);
    double alpha = 4 * r * r / ((1 - r) * (1 - r) * (1 + r) * (1 + r));
    double best = Math.floor(1.1447 * Math.cbrt(alpha * n));
    return Math.max(ruleLag(n), (int) Math.min(best, n / 2));
  }

  /**
   * Covariance of regression coefficients whose residuals may be correlated and of unequal size.
   *
   * @param design the columns
   * @param residuals one per row, in order of time
   * @param lag number L of lags, at least 0
   */
  public static Covariance covariance(LeastSquares design, double[] residuals, int lag) {
    Check.sameLength("residuals", residuals, design.size());
    return Covariance.sandwich(design.map(), sum(scores(design, residuals), lag));
  }

  /**
   * As {@link #covarianceCorrected}, for a design whose last rows are not samples but what is known
   * of the coefficients beforehand: independent rows of unit variance.
   *
   * @param design the columns, samples first
   * @param residuals one per sample, in order of time
   * @param lag number L of lags, at least 0
   */
  public static Covariance covarianceWithPriors(LeastSquares design, double[] residuals, int lag) {
    int k = design.coefficientCount();
    int n = residuals.length;
    double[][] middle = sum(scores(design, residuals), lag);
    for (int i = 0; i < k; i++) {
      for (int j = 0; j < k; j++) {
        middle[i][j] *= n / (double) Math.max(1, n - k);
        for (int t = n; t < design.size(); t++) {
          middle[i][j] += design.basis(i, t) * design.basis(j, t);
        }
      }
    }
    return Covariance.sandwich(design.map(), middle);
  }

  private static double[][] scores(LeastSquares design, double[] residuals) {
    double[][] scores = new double[design.coefficientCount()][residuals.length];
    for (int j = 0; j < scores.length; j++) {
      for (int t = 0; t < residuals.length; t++) {
        scores[j][t] = design.basis(j, t) * residuals[t];
      }
    }
    return scores;
  }

  /** As {@link #covariance}, times n / (n - k) for the k coefficients that were fitted. */
  public static Covariance covarianceCorrected(LeastSquares design, double[] residuals, int lag) {
    double n = design.size();
    return covariance(design, residuals, lag).times(n / (n - design.coefficientCount()));
  }

  /**
   * Long-run variance of a series about its mean; over n it is the variance of the mean.
   *
   * @param values at least one
   * @param lag number L of lags, at least 0
   */
  public static double longRunVariance(double[] values, int lag) {
    double[] centred = Autocorrelation.centred(values);
    return sum(new double[][] {centred}, lag)[0][0] / values.length;
  }

  /**
   * As {@link #longRunVariance(double[], int)}, with the correlation of first order filtered out
   * before the lags are summed and put back after: no lag need be chosen, and strong correlation is
   * not underrated.
   *
   * @param values at least two
   * @see "Andrews &amp; Monahan (1992), Econometrica 60, 953"
   */
  public static double longRunVariance(double[] values) {
    Check.atLeast("number of values", values.length, 2);
    double[] centred = Autocorrelation.centred(values);
    return prewhitenedSum(new double[][] {centred})[0][0] / values.length;
  }

  /**
   * Long-run variance of values over that of independent ones; 1 for a constant.
   *
   * @param values at least two
   */
  public static double inflation(double[] values) {
    double independent = new Variance(false).evaluate(values);
    return independent > 0 ? longRunVariance(values) / independent : 1;
  }

  /** The sum over all lags, by prewhitening, of the products of columns of at least two scores. */
  static double[][] prewhitenedSum(double[][] scores) {
    int n = scores[0].length;
    double r = Arrays.stream(scores).mapToDouble(Autocorrelation::lag1).average().orElseThrow();
    double bounded = Math.max(-STRONGEST, Math.min(STRONGEST, r));
    double[][] rest = new double[scores.length][n - 1];
    for (int j = 0; j < rest.length; j++) {
      for (int t = 1; t < n; t++) {
        rest[j][t - 1] = scores[j][t] - bounded * scores[j][t - 1];
      }
    }
    double[][] sum =
        sum(rest, Arrays.stream(rest).mapToInt(NeweyWest::plugInLag).max().orElseThrow());
    double recoloured = n / ((n - 1.0) * (1 - bounded) * (1 - bounded));
    for (double[] row : sum) {
      for (int j = 0; j < row.length; j++) {
        row[j] *= recoloured;
      }
    }
    return sum;
  }

  /** Weighted sum over lags of the products of k score columns, k &times; k. */
  static double[][] sum(double[][] scores, int lag) {
    Check.atLeast("lag", lag, 0);
    int k = scores.length;
    double[][] moving = new double[k][];
    for (int j = 0; j < k; j++) {
      moving[j] = movingSums(scores[j], lag + 1);
    }
    double[][] sum = new double[k][k];
    for (int i = 0; i < k; i++) {
      for (int j = 0; j <= i; j++) {
        sum[i][j] = LeastSquares.dot(moving[i], moving[j]) / (lag + 1);
        sum[j][i] = sum[i][j];
      }
    }
    return sum;
  }

  /** All n + width - 1 sums over a window that slides from before the first score to the last. */
  private static double[] movingSums(double[] scores, int width) {
    double[] sums = new double[scores.length + width - 1];
    double running = 0;
    for (int t = 0; t < sums.length; t++) {
      running += t < scores.length ? scores[t] : 0;
      running -= t >= width ? scores[t - width] : 0;
      sums[t] = running;
    }
    return sums;
  }
}
