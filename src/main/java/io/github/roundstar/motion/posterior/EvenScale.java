package io.github.roundstar.motion.posterior;

import java.util.function.DoubleUnaryOperator;

/**
 * A scale on which a number is known about equally well everywhere: one unit is about a standard
 * deviation. Lattices are even on it.
 *
 * @see "Fisher information of a spectrum: Whittle (1953), Ark. Mat. 2, 423 (from memory)"
 */
final class EvenScale {
  private static final int POINTS = 1600;
  private static final int FREQUENCIES = 48;

  /** Denser at low frequencies, where wander shows. */
  private static final double[] COSINES = new double[FREQUENCIES];

  static {
    for (int j = 0; j < FREQUENCIES; j++) {
      double x = (j + 0.5) / FREQUENCIES;
      COSINES[j] = Math.cos(Math.PI * x * x * x);
    }
  }

  private final double low;
  private final double step;
  private final double[] even = new double[POINTS + 1];

  /** Standard deviation at every knot: how much of the number there is in a unit. */
  private final double[] width = new double[POINTS + 1];

  /**
   * A scale.
   *
   * @param deviation standard deviation of the number as a function of it
   */
  private EvenScale(double low, double high, DoubleUnaryOperator deviation) {
    this.low = low;
    this.step = (high - low) / POINTS;
    width[0] = deviation.applyAsDouble(low);
    for (int i = 0; i < POINTS; i++) {
      width[i + 1] = deviation.applyAsDouble(low + (i + 1) * step);
      even[i + 1] = even[i] + step * (1 / width[i] + 1 / width[i + 1]) / 2;
    }
  }

  /** Of the ratio's logarithm [decades of 1/s], for so many frames with noise of such a memory. */
  static EvenScale ofRatio(int frames, double cadence, double memory, double widest) {
    double share = Math.exp(-cadence / memory);
    return new EvenScale(
        -12,
        7,
        logRatio -> {
          double walk = Math.pow(10, logRatio) * cadence;
          return deviation(
              frames, cosine -> Math.log(10) * walk / (walk + noise(cosine, share)), widest);
        });
  }

  /** Of the memory's natural logarithm, for so many frames beside such a wander. */
  static EvenScale ofMemory(int frames, double cadence, double ratio, double widest) {
    double walk = ratio * cadence;
    return new EvenScale(
        -8,
        8,
        logMemory -> {
          double memory = Math.exp(logMemory);
          double share = Math.exp(-cadence / memory);
          double byLog = share * cadence / memory;
          return deviation(
              frames,
              cosine -> {
                double noise = noise(cosine, share);
                double byShare =
                    -2 * share / (1 - share * share)
                        - 2 * (share - cosine) / (1 - 2 * share * cosine + share * share);
                return byLog * byShare * noise / (noise + walk);
              },
              widest);
        });
  }

  /** Spectrum of the steps of a noise with a memory. */
  private static double noise(double cosine, double share) {
    return 2 * (1 - cosine) * (1 - share * share) / (1 - 2 * share * cosine + share * share);
  }

  /** From the slope of the spectrum's logarithm; the noise's own strength is not known either. */
  private static double deviation(int frames, DoubleUnaryOperator slope, double widest) {
    double sum = 0;
    double squares = 0;
    for (int j = 0; j < FREQUENCIES; j++) {
      double x = (j + 0.5) / FREQUENCIES;
      double value = slope.applyAsDouble(COSINES[j]);
      double weight = 3 * x * x / FREQUENCIES;
      sum += weight * value;
      squares += weight * value * value;
    }
    double information = frames / 2.0 * Math.max(0, squares - sum * sum);
    return 1 / Math.sqrt(information + 1 / (widest * widest));
  }

  /** The even scale's number of a number, within the bounds of the scale. */
  double even(double x) {
    double at = Math.max(0, Math.min(POINTS - 1e-9, (x - low) / step));
    int i = (int) at;
    return even[i] + (at - i) * (even[i + 1] - even[i]);
  }

  /** Whether the scale reaches so far. */
  boolean holds(double evenNumber) {
    return evenNumber >= 0 && evenNumber <= even[POINTS];
  }

  /** Its upper end. */
  double end() {
    return even[POINTS];
  }

  /** The number of an even scale's number, by cubics through the knots. */
  double number(double evenNumber) {
    int i = segment(evenNumber);
    double span = even[i + 1] - even[i];
    double s = (evenNumber - even[i]) / span;
    double h1 = s * s * (3 - 2 * s);
    double slopes = span * (s * (1 - s) * ((1 - s) * width[i] - s * width[i + 1]));
    return low + step * (i + h1) + slopes;
  }

  /** How much of the number there is in a unit of the even scale: the slope of {@link #number}. */
  double width(double evenNumber) {
    int i = segment(evenNumber);
    double span = even[i + 1] - even[i];
    double s = (evenNumber - even[i]) / span;
    return 6 * s * (1 - s) * step / span
        + (1 - s) * (1 - 3 * s) * width[i]
        + s * (3 * s - 2) * width[i + 1];
  }

  private int segment(double evenNumber) {
    int below = 0;
    int above = POINTS;
    while (above - below > 1) {
      int middle = (below + above) / 2;
      if (even[middle] <= evenNumber) {
        below = middle;
      } else {
        above = middle;
      }
    }
    return below;
  }
}
