package io.github.roundstar.signal;

import java.util.Random;

/**
 * The log likelihood of a walk beside noise with a memory about one place, by the dense covariance
 * matrix: its parabola by differences over steps of 0.01 in the correlation and 0.02 decades.
 */
final class DenseMemory {
  private static final double STEP = 0.01;
  private static final double RATIO_STEP = 0.02;
  private static final double CADENCE = 2.5;

  private final double[] seconds;
  private final boolean[] starts;
  private final double[] data;
  private final double[][] slope;

  private DenseMemory(double[] seconds, boolean[] starts, double[] data) {
    this.seconds = seconds;
    this.starts = starts;
    this.data = data;
    this.slope = new double[][] {seconds};
  }

  /**
   * A seeded walk and an autoregression of first order, in two pieces; most samples stand 2.5 s
   * apart, and a gap of a minute is between the pieces.
   */
  static DenseMemory series(long seed, int size, double correlation, double walkPerStep) {
    Random random = new Random(seed);
    double[] seconds = new double[size];
    boolean[] starts = new boolean[size];
    double[] data = new double[size];
    double walk = 0;
    double noise = random.nextGaussian();
    for (int i = 0; i < size; i++) {
      starts[i] = i == 0 || i == size / 3;
      seconds[i] = i * CADENCE + (i >= size / 3 ? 60 : 0);
      walk += walkPerStep * random.nextGaussian() + (i == size / 3 ? 8 : 0);
      noise =
          correlation * noise + Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
      data[i] = walk + 0.4 * noise;
    }
    return new DenseMemory(seconds, starts, data);
  }

  WanderNoise white() {
    return WanderNoise.fit(seconds, starts, data, slope).orElseThrow();
  }

  WanderNoise.Remembering found() {
    return white().remembering(seconds, starts, data, slope);
  }

  WanderNoise refit(WanderNoise other) {
    return other.refit(seconds, starts, data, slope).orElseThrow();
  }

  /**
   * Where the likelihood's parabola has its peak and how wide it is.
   *
   * @param correlation of the peak
   * @param logRatio of the peak [decades]
   * @param error standard error of the correlation
   * @param ratioError that of the ratio [decades]
   * @param ratioHere the likeliest ratio for the correlation that was asked [decades]
   */
  record Peak(
      double correlation, double logRatio, double error, double ratioError, double ratioHere) {}

  /** The parabola about a place. */
  Peak near(double correlation, double logRatio) {
    double middle = at(correlation, logRatio);
    double left = at(correlation - STEP, logRatio);
    double right = at(correlation + STEP, logRatio);
    double low = at(correlation, logRatio - RATIO_STEP);
    double high = at(correlation, logRatio + RATIO_STEP);
    double both =
        (at(correlation + STEP, logRatio + RATIO_STEP)
                - at(correlation + STEP, logRatio - RATIO_STEP)
                - at(correlation - STEP, logRatio + RATIO_STEP)
                + at(correlation - STEP, logRatio - RATIO_STEP))
            / (4 * STEP * RATIO_STEP);
    double c = (right - left) / (2 * STEP);
    double r = (high - low) / (2 * RATIO_STEP);
    double cc = (right - 2 * middle + left) / (STEP * STEP);
    double rr = (high - 2 * middle + low) / (RATIO_STEP * RATIO_STEP);
    double determinant = cc * rr - both * both;
    return new Peak(
        correlation - (c * rr - r * both) / determinant,
        logRatio - (r * cc - c * both) / determinant,
        Math.sqrt(-rr / determinant),
        Math.sqrt(-cc / determinant),
        logRatio - r / rr);
  }

  private double at(double correlation, double logRatio) {
    return new DenseWander(seconds, starts, data, slope, Math.pow(10, logRatio))
        .remembering(-CADENCE / Math.log(correlation))
        .restrictedLogLikelihood();
  }
}
