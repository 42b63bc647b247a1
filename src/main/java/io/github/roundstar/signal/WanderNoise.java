package io.github.roundstar.signal;

import java.util.Optional;

/**
 * How much of a series is random wander and how much noise, beside a linear model.
 *
 * @param noiseVariance variance R of the noise, in the data's unit squared
 * @param ratioPerSecond wander over noise, q / R [1/s]; {@code q} is the variance that the walk
 *     gains per second
 * @param memorySeconds time in which the noise forgets all but 1/e of itself; 0 for white noise
 */
public record WanderNoise(double noiseVariance, double ratioPerSecond, double memorySeconds) {
  static final double LOWEST_LOG_RATIO = -9;
  static final double HIGHEST_LOG_RATIO = 5;
  private static final int COARSE_STEPS = 14;

  /** White noise beside the wander. */
  public WanderNoise(double noiseVariance, double ratioPerSecond) {
    this(noiseVariance, ratioPerSecond, 0);
  }

  /**
   * Fits wander and white noise by restricted maximum likelihood, the linear model concentrated
   * out: one search over the ratio.
   *
   * <p>Returns nothing when there are no more steps than regressors plus one, or when the
   * regressors explain the data to rounding (a constant series).
   *
   * @param seconds ascending times, n of them [s]
   * @param startsPiece n flags: the level before this sample has nothing to do with the level after
   *     it
   * @param data n values
   * @param regressors columns of n values each; no constant, since every piece has its own unknown
   *     level
   * @see "Harville (1977), J. Am. Stat. Assoc. 72, 320, for the restricted likelihood"
   */
  public static Optional<WanderNoise> fit(
      double[] seconds, boolean[] startsPiece, double[] data, double[][] regressors) {
    WanderLikelihood likelihood = new WanderLikelihood(seconds, startsPiece, data, regressors, 0);
    if (!likelihood.informative(LOWEST_LOG_RATIO)) {
      return Optional.empty();
    }
    double best = LOWEST_LOG_RATIO;
    double bestValue = Double.NEGATIVE_INFINITY;
    double step = (HIGHEST_LOG_RATIO - LOWEST_LOG_RATIO) / COARSE_STEPS;
    for (int i = 0; i <= COARSE_STEPS; i++) {
      double at = LOWEST_LOG_RATIO + i * step;
      double value = likelihood.at(at);
      if (value > bestValue) {
        bestValue = value;
        best = at;
      }
    }
    return Optional.of(likelihood.model(likelihood.highest(best)));
  }

  /**
   * As {@link #fit}, for the same series beside another linear model and noise of the same memory:
   * climbs from this ratio, so of several peaks it finds the one uphill. Whether the series says
   * anything is judged by this ratio too.
   */
  public Optional<WanderNoise> refit(
      double[] seconds, boolean[] startsPiece, double[] data, double[][] regressors) {
    WanderLikelihood likelihood =
        new WanderLikelihood(seconds, startsPiece, data, regressors, memorySeconds);
    double start = Math.log10(ratioPerSecond);
    if (!likelihood.informative(start)) {
      return Optional.empty();
    }
    return Optional.of(likelihood.model(likelihood.highest(start)));
  }

  /** The same with white noise. */
  public WanderNoise white() {
    return new WanderNoise(noiseVariance, ratioPerSecond);
  }

  /** Share of the noise that is still there after so long. */
  double remembered(double afterSeconds) {
    return Whitening.remembered(afterSeconds, memorySeconds);
  }

  /** The filter that makes such a series white. */
  public Whitening whitening(double[] seconds, boolean[] startsPiece) {
    return Whitening.of(seconds, startsPiece, ratioPerSecond, memorySeconds);
  }

  /**
   * One-sided power spectral density of wander and noise sampled every {@code stepSeconds}, in the
   * data's unit squared per hertz.
   */
  public double density(double hertz, double stepSeconds) {
    double sine = 2 * Math.sin(Math.PI * hertz * stepSeconds);
    double share = remembered(stepSeconds);
    double noise = (1 - share * share) / ((1 - share) * (1 - share) + share * sine * sine);
    return 2 * noiseVariance * stepSeconds * (noise + ratioPerSecond * stepSeconds / (sine * sine));
  }
}
