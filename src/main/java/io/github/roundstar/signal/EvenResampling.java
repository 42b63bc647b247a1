package io.github.roundstar.signal;

/**
 * A series on an even grid of times, straight lines between samples. For display: gaps are bridged
 * by a line, and noise between samples is smoothed away, so no statistic should be taken from it.
 */
public final class EvenResampling {
  private static final int MOST = 10_000_000;

  private EvenResampling() {}

  /**
   * The series at its first time and every {@code stepSeconds} after it, up to its last.
   *
   * @param series at least one sample
   * @param stepSeconds grid step, positive, and not below a ten-millionth of the span [s]
   */
  public static Series of(Series series, double stepSeconds) {
    Check.atLeast("number of samples", series.size(), 1);
    Check.positive("step", stepSeconds);
    double steps = series.spanSeconds() / stepSeconds;
    if (steps > MOST) {
      throw new IllegalArgumentException("step " + stepSeconds + " s makes " + steps + " samples");
    }
    // The last time still counts when rounding puts it just short of a grid point.
    int n = (int) Math.floor(steps * (1 + 1e-12)) + 1;
    double[] seconds = new double[n];
    double[] values = new double[n];
    int after = 0;
    for (int i = 0; i < n; i++) {
      seconds[i] = series.seconds(0) + i * stepSeconds;
      while (after < series.size() - 1 && series.seconds(after) < seconds[i]) {
        after++;
      }
      values[i] = between(series, after, seconds[i]);
    }
    return Series.of(seconds, values);
  }

  private static double between(Series series, int after, double seconds) {
    if (after == 0) {
      return series.value(0);
    }
    double from = series.seconds(after - 1);
    double share = Math.min(1, (seconds - from) / (series.seconds(after) - from));
    return (1 - share) * series.value(after - 1) + share * series.value(after);
  }
}
