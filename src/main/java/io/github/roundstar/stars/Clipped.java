package io.github.roundstar.stars;

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
    float[] kept = values.clone();
    int size = kept.length;
    double median = Double.NaN;
    double mean = Double.NaN;
    double sigma = Double.NaN;
    for (int pass = 0; pass < CLIPS && size > 0; pass++) {
      median = select(kept, size, size / 2);
      double sum = 0;
      double squares = 0;
      for (int i = 0; i < size; i++) {
        double off = kept[i] - median;
        sum += off;
        squares += off * off;
      }
      mean = median + sum / size;
      sigma = Math.sqrt(squares / size);
      int before = size;
      size = clip(kept, size, median - CLIP_SIGMAS * sigma, median + CLIP_SIGMAS * sigma);
      if (size == before) {
        break;
      }
    }
    boolean skewed = Math.abs(mean - median) > SKEWED * sigma;
    return new Clipped(skewed ? median : 2.5 * median - 1.5 * mean, sigma);
  }

  /** Moves the values inside the bounds to the front; how many there are. */
  private static int clip(float[] values, int size, double least, double most) {
    int kept = 0;
    for (int i = 0; i < size; i++) {
      float value = values[i];
      if (value >= least && value <= most) {
        values[kept++] = value;
      }
    }
    return kept;
  }

  /**
   * The value that would stand at an index if the first values were sorted; moves them about. A
   * whole sort takes most of the time that an image takes.
   *
   * @see "Hoare (1961), Algorithm 65: Find, Communications of the ACM 4, 321"
   */
  private static float select(float[] values, int size, int index) {
    int from = 0;
    int to = size - 1;
    while (from < to) {
      float pivot = values[index];
      int low = from;
      int high = to;
      while (low <= high) {
        while (values[low] < pivot) {
          low++;
        }
        while (values[high] > pivot) {
          high--;
        }
        if (low <= high) {
          float swapped = values[low];
          values[low++] = values[high];
          values[high--] = swapped;
        }
      }
      from = high < index ? low : from;
      to = low > index ? high : to;
    }
    return values[index];
  }
}
