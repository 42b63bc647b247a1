package io.github.roundstar.signal;

/**
 * Where a wandering quantity really was, from all of its noisy samples before and after: the
 * fixed-interval smoother of the local level model in one pass each way; immutable.
 *
 * <p>Both passes carry the precision of what they know in units of one over the noise variance, so
 * that a piece starts with none and no large number stands for ignorance. The answer at a sample is
 * the weighted mean of both.
 *
 * @see "Fraser &amp; Potter (1969), IEEE Trans. Autom. Control 14, 387; Durbin &amp; Koopman, Time
 *     Series Analysis by State Space Methods, 2nd ed. (2012), section 2.4"
 */
public final class WanderPath {
  private final double[] level;
  private final double[] variance;
  private final double[] carry;

  private WanderPath(double[] level, double[] variance, double[] carry) {
    this.level = level;
    this.variance = variance;
    this.carry = carry;
  }

  /**
   * Smooths.
   *
   * @param seconds ascending times, n of them [s]
   * @param startsPiece n flags: the level before this time has nothing to do with the level after
   *     it
   * @param data n values; NaN where nothing was measured
   * @param model wander and noise of the data
   */
  public static WanderPath of(
      double[] seconds, boolean[] startsPiece, double[] data, WanderNoise model) {
    return of(seconds, startsPiece, data, model, new double[data.length]);
  }

  /**
   * The same, where the level may move farther at some samples.
   *
   * @param loose per sample what the level may have moved just before it beyond its wander, as a
   *     variance over the noise's [&ge; 0]
   */
  public static WanderPath of(
      double[] seconds, boolean[] startsPiece, double[] data, WanderNoise model, double[] loose) {
    int n = data.length;
    double ratio = model.ratioPerSecond();
    Known before = new Known();
    double[] carry = new double[n];
    double[] precision = new double[n];
    double[] level = new double[n];
    for (int i = 0; i < n; i++) {
      if (i > 0) {
        double walk = ratio * (seconds[i] - seconds[i - 1]) + loose[i];
        carry[i - 1] = startsPiece[i] ? 0 : 1 / (1 + before.precision * walk);
        before.walk(startsPiece[i] ? Double.POSITIVE_INFINITY : walk);
      }
      before.see(data[i]);
      precision[i] = before.precision;
      level[i] = before.level;
    }
    return backward(seconds, startsPiece, data, model, loose, carry, precision, level);
  }

  private static WanderPath backward(
      double[] seconds,
      boolean[] startsPiece,
      double[] data,
      WanderNoise model,
      double[] loose,
      double[] carry,
      double[] precision,
      double[] level) {
    int n = data.length;
    double[] variance = new double[n];
    Known after = new Known();
    for (int i = n - 1; i >= 0; i--) {
      if (i < n - 1) {
        double walk = model.ratioPerSecond() * (seconds[i + 1] - seconds[i]) + loose[i + 1];
        after.walk(startsPiece[i + 1] ? Double.POSITIVE_INFINITY : walk);
      }
      double both = precision[i] + after.precision;
      if (both > 0) {
        level[i] = (precision[i] * level[i] + after.precision * after.level) / both;
      }
      variance[i] = model.noiseVariance() / both;
      after.see(data[i]);
    }
    return new WanderPath(level, variance, carry);
  }

  /** What one pass knows of the level. */
  private static final class Known {
    private double level;
    private double precision;

    void walk(double variance) {
      boolean lost = Double.isInfinite(variance);
      precision = lost ? 0 : precision / (1 + precision * variance);
      level = lost ? 0 : level;
    }

    void see(double value) {
      if (!Double.isNaN(value)) {
        precision += 1;
        level += (value - level) / precision;
      }
    }
  }

  /** Number of times. */
  public int size() {
    return level.length;
  }

  /** The level at time {@code i}, in the data's unit; 0 in a piece without a sample. */
  public double level(int i) {
    return level[i];
  }

  /** Its variance, given all samples; infinite in a piece without a sample. */
  public double variance(int i) {
    return variance[i];
  }

  /**
   * The share of an error at time {@code i + 1} that the level at time {@code i} has too: the
   * covariance of two levels is the variance of the later one times all shares in between. 0 across
   * the border of two pieces.
   *
   * @see "de Jong &amp; Mackinnon (1988), Biometrika 75, 601"
   */
  public double carry(int i) {
    return carry[i];
  }
}
