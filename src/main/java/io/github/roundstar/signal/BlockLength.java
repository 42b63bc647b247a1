package io.github.roundstar.signal;

import java.util.Arrays;

/**
 * Length of the blocks of a moving-block bootstrap that suits how far a series remembers itself.
 *
 * <p>Autocovariances up to twice the last lag that stands out are weighed with a flat-top window;
 * the length that makes the error of the mean's variance least follows from them and grows with the
 * cube root of n.
 *
 * @see "Politis &amp; White (2004), Econometric Reviews 23, 53; Patton, Politis &amp; White (2009),
 *     Econometric Reviews 28, 372"
 */
public final class BlockLength {
  /** So many lags in a row must be nothing before memory counts as ended. */
  private static final int LEAST_QUIET_LAGS = 5;

  private BlockLength() {}

  /**
   * Samples per block, at least 1 and at most a third of the series.
   *
   * @param values at least one, in order of time
   */
  public static int of(double[] values) {
    double wanted = optimal(values);
    double most = Math.min(3 * Math.sqrt(values.length), values.length / 3.0);
    return (int) Math.max(1, Math.ceil(Math.min(wanted, most)));
  }

  /** The optimal length before rounding and bounds; 1 for values that do not vary. */
  static double optimal(double[] values) {
    double[] centred = Autocorrelation.centred(values);
    int n = values.length;
    double variance = covariance(centred, 0);
    if (variance == 0) {
      return 1;
    }
    int most = Math.min(n - 1, 2 * memory(centred, variance));
    double weighted = 0;
    double spectrum = variance;
    for (int lag = 1; lag <= most; lag++) {
      double share = 2 * flatTop((double) lag / most) * covariance(centred, lag);
      weighted += share * lag;
      spectrum += share;
    }
    double squares = 4.0 / 3 * spectrum * spectrum;
    return squares == 0 ? n : Math.cbrt(2 * weighted * weighted / squares * n);
  }

  /** The last lag before a row of lags whose correlation is nothing; at least 1. */
  private static int memory(double[] centred, double variance) {
    int n = centred.length;
    int quiet = (int) Math.max(LEAST_QUIET_LAGS, Math.ceil(Math.sqrt(Math.log10(n))));
    double band = 2 * Math.sqrt(Math.log10(n) / n);
    int last = Math.min(n - 1, (int) Math.ceil(Math.sqrt(n)) + quiet);
    int inRow = 0;
    for (int lag = 1; lag <= last; lag++) {
      inRow = Math.abs(covariance(centred, lag)) / variance < band ? inRow + 1 : 0;
      if (inRow == quiet) {
        return Math.max(1, lag - quiet);
      }
    }
    return Math.max(1, last);
  }

  private static double covariance(double[] centred, int lag) {
    int n = centred.length;
    double[] earlier = Arrays.copyOfRange(centred, 0, n - lag);
    double[] later = Arrays.copyOfRange(centred, lag, n);
    return LeastSquares.dot(earlier, later) / n;
  }

  private static double flatTop(double t) {
    return t <= 0.5 ? 1 : 2 * (1 - t);
  }
}
