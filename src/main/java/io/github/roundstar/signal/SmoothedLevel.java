package io.github.roundstar.signal;

/**
 * The level behind a series that wanders at random and carries white noise, estimated from all of
 * the series, before and after: the fixed-interval smoother of the local level model.
 *
 * <p>For data that follow the model the level is its conditional mean, so that any sum in which the
 * true level stands linearly is estimated without bias by putting this one in its place.
 *
 * @see "Durbin &amp; Koopman, Time Series Analysis by State Space Methods, 2nd ed. (2012), section
 *     4.4; Rauch, Tung &amp; Striebel (1965), AIAA J. 3, 1445"
 */
public final class SmoothedLevel {
  private final double[] level;
  private final double[] variance;

  private SmoothedLevel(double[] level, double[] variance) {
    this.level = level;
    this.variance = variance;
  }

  /**
   * Smooths.
   *
   * @param seconds ascending times, n of them [s]
   * @param startsPiece n flags: the level before this sample has nothing to do with the level after
   *     it; the first sample starts a piece in any case
   * @param wanderNoise wander and noise
   * @param looseVariance per sample what the level may have moved just before it beyond its wander,
   *     as a variance over the noise's [&ge; 0]
   * @param data n values
   */
  public static SmoothedLevel of(
      double[] seconds,
      boolean[] startsPiece,
      WanderNoise wanderNoise,
      double[] looseVariance,
      double[] data) {
    int n = data.length;
    double[] level = new double[n];
    double[] variance = new double[n];
    double[] predicted = new double[n];
    for (int i = 0; i < n; i++) {
      if (i == 0 || startsPiece[i]) {
        level[i] = data[i];
        variance[i] = 1;
        continue;
      }
      double elapsed = seconds[i] - seconds[i - 1];
      predicted[i] = variance[i - 1] + wanderNoise.ratioPerSecond() * elapsed + looseVariance[i];
      double gain = predicted[i] / (predicted[i] + 1);
      level[i] = level[i - 1] + gain * (data[i] - level[i - 1]);
      variance[i] = gain;
    }
    for (int i = n - 2; i >= 0; i--) {
      if (!startsPiece[i + 1]) {
        double back = variance[i] / predicted[i + 1];
        level[i] += back * (level[i + 1] - level[i]);
        variance[i] += back * back * (variance[i + 1] - predicted[i + 1]);
      }
    }
    for (int i = 0; i < n; i++) {
      variance[i] *= wanderNoise.noiseVariance();
    }
    return new SmoothedLevel(level, variance);
  }

  /** The level at sample {@code i}, in the data's unit. */
  public double at(int i) {
    return level[i];
  }

  /** Its variance, in the data's unit squared. */
  public double variance(int i) {
    return variance[i];
  }
}
