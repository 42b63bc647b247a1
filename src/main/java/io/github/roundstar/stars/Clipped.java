package io.github.roundstar.stars;

import java.util.Arrays;

/**
 * Level and scatter of the sky in one mesh. Stars are clipped away at three standard deviations
 * from the median; the level is the mode 2.5 median - 1.5 mean, or the median where stars have
 * skewed the rest.
 *
 * @param level level of the sky; NaN without values
 * @param sigma standard deviation; NaN without values
 * @see "Bertin &amp; Arnouts (1996), A&amp;AS 117, 393, section 4.1"
 */
record Clipped(double level, double sigma) {
  private static final int CLIPS = 8;
  private static final double CLIP_SIGMAS = 3;

  /** Mean less median over the deviation, beyond which the median is taken. */
  private static final double SKEWED = 0.3;

  static Clipped of(float[] values) {
    float[] sorted = values.clone();
    Arrays.sort(sorted);
    int from = 0;
    int to = sorted.length;
    double median = Double.NaN;
    double mean = Double.NaN;
    double sigma = Double.NaN;
    for (int pass = 0; pass < CLIPS && to > from; pass++) {
      median = sorted[(from + to) / 2];
      double sum = 0;
      double squares = 0;
      for (int i = from; i < to; i++) {
        double off = sorted[i] - median;
        sum += off;
        squares += off * off;
      }
      mean = median + sum / (to - from);
      sigma = Math.sqrt(squares / (to - from));
      int before = to - from;
      while (from < to && sorted[from] < median - CLIP_SIGMAS * sigma) {
        from++;
      }
      while (to > from && sorted[to - 1] > median + CLIP_SIGMAS * sigma) {
        to--;
      }
      if (to - from == before) {
        break;
      }
    }
    boolean skewed = Math.abs(mean - median) > SKEWED * sigma;
    return new Clipped(skewed ? median : 2.5 * median - 1.5 * mean, sigma);
  }
}
