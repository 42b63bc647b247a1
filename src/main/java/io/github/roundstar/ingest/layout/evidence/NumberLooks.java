package io.github.roundstar.ingest.layout.evidence;

import io.github.roundstar.signal.Quantile;
import java.util.Arrays;

/**
 * What the numbers of a column look like.
 *
 * @param median their median
 * @param scatter median distance from it, as a standard deviation
 * @param step median step from number to number
 * @param rising share of steps that go up
 * @param largest the largest size
 * @param whole whether all are whole
 */
record NumberLooks(
    double median, double scatter, double step, double rising, double largest, boolean whole) {
  /** Values looked at for what takes them all, such as a median. */
  private static final int LOOKED_AT = 4000;

  static NumberLooks of(double[] all) {
    double[] values = all.length <= LOOKED_AT ? all : thinned(all);
    double median = values.length == 0 ? Double.NaN : Quantile.median(values);
    double[] away = Arrays.stream(values).map(v -> Math.abs(v - median)).toArray();
    double[] steps = new double[Math.max(0, Math.min(LOOKED_AT, all.length) - 1)];
    int up = 0;
    double largest = 0;
    boolean whole = all.length > 0;
    for (int i = 0; i < all.length; i++) {
      if (i > 0 && i <= steps.length) {
        steps[i - 1] = all[i] - all[i - 1];
      }
      up += i > 0 && all[i] > all[i - 1] ? 1 : 0;
      largest = Math.max(largest, Math.abs(all[i]));
      whole &= all[i] == Math.rint(all[i]);
    }
    return new NumberLooks(
        median,
        away.length == 0 ? Double.NaN : 1.4826 * Quantile.median(away),
        steps.length == 0 ? Double.NaN : Quantile.median(steps),
        all.length < 2 ? 0 : up / (all.length - 1.0),
        largest,
        whole);
  }

  private static double[] thinned(double[] all) {
    double[] some = new double[LOOKED_AT];
    for (int i = 0; i < LOOKED_AT; i++) {
      some[i] = all[(int) ((long) i * all.length / LOOKED_AT)];
    }
    return some;
  }
}
