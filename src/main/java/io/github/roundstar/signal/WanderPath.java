package io.github.roundstar.signal;

/**
 * Where a wandering quantity really was, from all of its noisy samples before and after: the
 * fixed-interval smoother of the local level model in one pass each way; immutable.
 *
 * <p>The pass forward is the filter of {@link Whitening}, noise with a memory included; the pass
 * back corrects each level by what is known of the next one. A sample that was not measured ends
 * the noise's memory: what is left of it after so long is less than the model is true to.
 *
 * @see "Rauch, Tung &amp; Striebel (1965), AIAA J. 3, 1445; Durbin &amp; Koopman, Time Series
 *     Analysis by State Space Methods, 2nd ed. (2012), section 4.4"
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
    Forward forward = new Forward(data, model, seconds);
    for (int i = 0; i < data.length; i++) {
      if (i == 0 || startsPiece[i]) {
        forward.begin(i);
      } else {
        forward.step(i, model.ratioPerSecond() * (seconds[i] - seconds[i - 1]) + loose[i]);
      }
    }
    return forward.back(model.noiseVariance());
  }

  /** The filter, and what each level takes over from the next one. */
  private static final class Forward {
    private final double[] data;
    private final WanderNoise model;
    private final double[] seconds;
    private final double[] level;
    private final double[] variance;
    private final double[] ahead;
    private final double[] own;
    private final double[] carry;

    Forward(double[] data, WanderNoise model, double[] seconds) {
      int n = data.length;
      this.data = data;
      this.model = model;
      this.seconds = seconds;
      this.level = new double[n];
      this.variance = new double[n];
      this.ahead = new double[n];
      this.own = new double[n];
      this.carry = new double[n];
    }

    /** Nothing is known but this sample. */
    void begin(int i) {
      boolean seen = !Double.isNaN(data[i]);
      level[i] = seen ? data[i] : 0;
      variance[i] = seen ? 1 : Double.POSITIVE_INFINITY;
    }

    void step(int i, double walk) {
      int last = i - 1;
      if (Double.isInfinite(variance[last])) {
        begin(i);
        carry[last] = 1;
        own[last] = walk;
        ahead[last] = level[i];
      } else if (Double.isNaN(data[i])) {
        level[i] = level[last];
        variance[i] = variance[last] + walk;
        carry[last] = variance[last] / variance[i];
        own[last] = carry[last] * walk;
        ahead[last] = level[last];
      } else {
        see(i, walk);
      }
    }

    private void see(int i, double walk) {
      int last = i - 1;
      double share = Double.isNaN(data[last]) ? 0 : model.remembered(seconds[i] - seconds[last]);
      double renewed = 1 - share * share;
      double before = variance[last];
      double along = (1 - share) * before;
      double total = (1 - share) * along + walk + renewed;
      double both = share * share * before * walk + (before + walk) * renewed;
      double noise = Double.isNaN(data[last]) ? 0 : data[last] - level[last];
      double error = data[i] - level[last] - share * noise;
      level[i] = level[last] + (along + walk) / total * error;
      variance[i] = both / total;
      carry[last] = before * (share * walk + renewed) / both;
      own[last] = before * walk * renewed / both;
      ahead[last] = level[last] + along / total * error;
    }

    WanderPath back(double noiseVariance) {
      double filtered = 0;
      for (int i = level.length - 1; i >= 0; i--) {
        double here = level[i];
        if (carry[i] > 0) {
          level[i] = ahead[i] + carry[i] * (level[i + 1] - filtered);
          variance[i] = own[i] + carry[i] * carry[i] * variance[i + 1];
        }
        filtered = here;
      }
      for (int i = 0; i < variance.length; i++) {
        variance[i] *= noiseVariance;
      }
      return new WanderPath(level, variance, carry);
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
