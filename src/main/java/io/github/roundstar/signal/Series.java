package io.github.roundstar.signal;

/** Samples of one quantity at strictly ascending times; all finite, never changed. */
public final class Series {
  private final double[] seconds;
  private final double[] values;

  private Series(double[] seconds, double[] values) {
    this.seconds = seconds;
    this.values = values;
  }

  /**
   * Copies and checks. An empty series is allowed.
   *
   * @param seconds times, strictly ascending [s]
   * @param values as many values, any unit
   * @throws IllegalArgumentException if lengths differ, a number is not finite or a time does not
   *     follow the one before it
   */
  public static Series of(double[] seconds, double[] values) {
    Series series = new Series(seconds.clone(), values.clone());
    Check.sameLength("values", series.values, series.seconds.length);
    Check.finite("time", series.seconds);
    Check.finite("value", series.values);
    for (int i = 1; i < series.size(); i++) {
      if (series.seconds[i] <= series.seconds[i - 1]) {
        throw new IllegalArgumentException(
            "time ["
                + i
                + "] = "
                + series.seconds[i]
                + " s does not follow ["
                + (i - 1)
                + "] = "
                + series.seconds[i - 1]
                + " s");
      }
    }
    return series;
  }

  /** Number of samples. */
  public int size() {
    return seconds.length;
  }

  /** Time of sample {@code i} [s]. */
  public double seconds(int i) {
    return seconds[i];
  }

  /** Value of sample {@code i}. */
  public double value(int i) {
    return values[i];
  }

  /** Last time minus first [s]; 0 for fewer than two samples. */
  public double spanSeconds() {
    return size() < 2 ? 0 : seconds[size() - 1] - seconds[0];
  }

  /** All times [s]; a new array. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** All values; a new array. */
  public double[] values() {
    return values.clone();
  }
}
