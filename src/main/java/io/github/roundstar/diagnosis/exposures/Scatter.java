package io.github.roundstar.diagnosis.exposures;

/**
 * Squares of one axis' places about their means, kept by stretches of the night, so that it can be
 * told how much other stretches of the same night would have differed. Filled once, then only read.
 */
public final class Scatter {
  /** Stretches of a night that are left out one by one. */
  public static final int STRETCHES = 24;

  private final double[] squares = new double[STRETCHES];
  private final double[] counts = new double[STRETCHES];

  /**
   * Adds places, about their own mean.
   *
   * @param places [arcsec]
   * @param from first of them
   * @param to one past the last
   * @param begin where in the night they begin, as a share, 0 to 1
   * @param end where they end, likewise
   */
  public void add(double[] places, int from, int to, double begin, double end) {
    double mean = 0;
    for (int i = from; i < to; i++) {
      mean += places[i];
    }
    mean /= Math.max(1, to - from);
    double each = STRETCHES * (end - begin) / Math.max(1, to - from);
    for (int i = from; i < to; i++) {
      int stretch = Math.min(STRETCHES - 1, (int) (STRETCHES * begin + (i - from) * each));
      squares[stretch] += (places[i] - mean) * (places[i] - mean);
      counts[stretch]++;
    }
  }

  /** Over the whole night [arcsec^2]; 0 without places. */
  public double meanSquare() {
    return meanSquareWithout(-1);
  }

  /** Without one stretch [arcsec^2]. */
  public double meanSquareWithout(int stretch) {
    double square = 0;
    double count = 0;
    for (int s = 0; s < STRETCHES; s++) {
      square += s == stretch ? 0 : squares[s];
      count += s == stretch ? 0 : counts[s];
    }
    return count == 0 ? 0 : square / count;
  }

  /** Whether a stretch has any place. */
  public boolean covers(int stretch) {
    return counts[stretch] > 0;
  }
}
