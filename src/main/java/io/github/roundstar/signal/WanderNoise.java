package io.github.roundstar.signal;

import io.github.roundstar.model.Estimate;
import java.util.Optional;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * How much of a series is random wander and how much white noise, beside a linear model.
 *
 * @param noiseVariance variance R of the white noise, in the data's unit squared
 * @param ratioPerSecond wander over noise, q / R [1/s]; {@code q} is the variance that the walk
 *     gains per second
 */
public record WanderNoise(double noiseVariance, double ratioPerSecond) {
  private static final double LOWEST_LOG_RATIO = -9;
  private static final double HIGHEST_LOG_RATIO = 5;
  private static final int COARSE_STEPS = 14;

  /** Far inside the ratio's standard error, which is a tenth of a decade at best [decades]. */
  private static final double LOG_RATIO_ACCURACY = 1e-4;

  /** Step of the numeric curvature of the likelihood [decades of the ratio]. */
  private static final double CURVATURE_STEP = 0.05;

  /** A noise that may as well be this many times larger or smaller is not known. */
  static final double VAGUE = 2;

  /** How far to either side of a former ratio is searched at first [decades]. */
  private static final double REACH = 0.25;

  /** How much farther, from its edge on, where the maximum lies beyond. */
  private static final double FARTHER = 4;

  /** A maximum within this share of the reach does not lie on the edge of the search. */
  private static final double WELL_INSIDE = 0.95;

  /**
   * Fits both by restricted maximum likelihood, the linear model concentrated out: one search over
   * the ratio.
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
    Likelihood likelihood = new Likelihood(seconds, startsPiece, data, regressors);
    if (!likelihood.informative()) {
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
    return Optional.of(at(likelihood, likelihood.highest(best, step)));
  }

  /**
   * As {@link #fit}, for the same series beside another linear model: looks near this ratio first.
   */
  public Optional<WanderNoise> refit(
      double[] seconds, boolean[] startsPiece, double[] data, double[][] regressors) {
    Likelihood likelihood = new Likelihood(seconds, startsPiece, data, regressors);
    if (!likelihood.informative()) {
      return Optional.empty();
    }
    double start = Math.log10(ratioPerSecond);
    for (double reach = REACH; reach < HIGHEST_LOG_RATIO - LOWEST_LOG_RATIO; reach *= FARTHER) {
      double found = likelihood.highest(start, reach);
      if (Math.abs(found - start) < WELL_INSIDE * reach) {
        return Optional.of(at(likelihood, found));
      }
      start = found;
    }
    return fit(seconds, startsPiece, data, regressors);
  }

  private static WanderNoise at(Likelihood likelihood, double logRatio) {
    double ratio = Math.pow(10, logRatio);
    return new WanderNoise(likelihood.noiseVariance(ratio), ratio);
  }

  /**
   * A fit with how well it knows the noise.
   *
   * @param model wander and noise
   * @param noise standard deviation of the white noise with its 95 % interval, in the data's unit;
   *     nothing when it cannot be told from wander, not even to a factor of {@value #VAGUE}
   */
  public record Measured(WanderNoise model, Optional<Estimate> noise) {}

  /**
   * This fit with the interval of the noise: its logarithm's variance for a known ratio, and what
   * the ratio's own variance adds, by the curvature of the likelihood. The arguments are those that
   * the fit was made from.
   */
  public Measured measured(
      double[] seconds, boolean[] startsPiece, double[] data, double[][] regressors) {
    return new Likelihood(seconds, startsPiece, data, regressors).measured(this);
  }

  /** The filter that makes such a series white. */
  public Whitening whitening(double[] seconds, boolean[] startsPiece) {
    return Whitening.of(seconds, startsPiece, ratioPerSecond);
  }

  /**
   * One-sided power spectral density of wander and noise sampled every {@code stepSeconds}, in the
   * data's unit squared per hertz.
   */
  public double density(double hertz, double stepSeconds) {
    double sine = 2 * Math.sin(Math.PI * hertz * stepSeconds);
    return 2 * noiseVariance * stepSeconds * (1 + ratioPerSecond * stepSeconds / (sine * sine));
  }

  /** The restricted log likelihood as a function of the ratio. */
  private static final class Likelihood {
    private final double[] seconds;
    private final boolean[] startsPiece;
    private final double[] data;
    private final double[][] regressors;
    private final double smallest;

    Likelihood(double[] seconds, boolean[] startsPiece, double[] data, double[][] regressors) {
      this.seconds = seconds;
      this.startsPiece = startsPiece;
      this.data = data;
      this.regressors = regressors;
      double largest = 0;
      for (double value : data) {
        largest = Math.max(largest, Math.abs(value));
      }
      this.smallest = 1e-24 * largest * largest;
    }

    boolean informative() {
      WhiteRegression fit = regression(1e-3);
      return fit.degreesOfFreedom() > 1 && fit.sumOfSquares() > smallest * fit.steps();
    }

    double at(double logRatio) {
      double ratio = Math.pow(10, logRatio);
      Whitening whitening = Whitening.of(seconds, startsPiece, ratio);
      WhiteRegression fit = whitened(whitening);
      double variance = fit.sumOfSquares() / fit.degreesOfFreedom();
      return -0.5
          * (fit.degreesOfFreedom() * Math.log(variance)
              + whitening.logDeterminant()
              + fit.logDeterminant());
    }

    /** Where it is highest within {@code reach} of {@code start}. */
    double highest(double start, double reach) {
      double low = Math.max(LOWEST_LOG_RATIO, start - reach);
      double high = Math.min(HIGHEST_LOG_RATIO, start + reach);
      return new BrentOptimizer(1e-9, LOG_RATIO_ACCURACY)
          .optimize(
              new MaxEval(60),
              new UnivariateObjectiveFunction(this::at),
              GoalType.MAXIMIZE,
              new SearchInterval(low, high, Math.max(low, Math.min(high, start))))
          .getPoint();
    }

    Measured measured(WanderNoise model) {
      double x = Math.log10(model.ratioPerSecond());
      double curvature =
          (at(x - CURVATURE_STEP) - 2 * at(x) + at(x + CURVATURE_STEP))
              / (CURVATURE_STEP * CURVATURE_STEP);
      double slope =
          Math.log(
                  noiseVariance(Math.pow(10, x + CURVATURE_STEP))
                      / noiseVariance(Math.pow(10, x - CURVATURE_STEP)))
              / (2 * CURVATURE_STEP);
      WhiteRegression fit = regression(model.ratioPerSecond());
      double variance = 2.0 / fit.degreesOfFreedom();
      if (curvature < 0) {
        variance -= slope * slope / curvature;
      }
      double sigma = Math.sqrt(model.noiseVariance());
      double factor = Math.exp(Estimate.SIGMAS_95 * Math.sqrt(variance) / 2);
      return new Measured(
          model,
          factor < VAGUE
              ? Optional.of(new Estimate(sigma, sigma / factor, sigma * factor))
              : Optional.empty());
    }

    double noiseVariance(double ratio) {
      WhiteRegression fit = regression(ratio);
      return fit.sumOfSquares() / fit.degreesOfFreedom();
    }

    private WhiteRegression regression(double ratio) {
      return whitened(Whitening.of(seconds, startsPiece, ratio));
    }

    private WhiteRegression whitened(Whitening whitening) {
      return WhiteRegression.of(whitening.apply(data), whitening.apply(regressors));
    }
  }
}
