package io.github.roundstar.signal;

import io.github.roundstar.model.Estimate;
import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * The restricted log likelihood of a wandering series with noise of a given memory, as a function
 * of the ratio of both, the linear model concentrated out.
 *
 * @see "Harville (1977), J. Am. Stat. Assoc. 72, 320"
 */
final class WanderLikelihood {
  /** Far inside the ratio's standard error, which is a tenth of a decade at best [decades]. */
  private static final double LOG_RATIO_ACCURACY = 1e-6;

  /** Step of the numeric curvature of the likelihood [decades of the ratio]. */
  private static final double CURVATURE_STEP = 0.05;

  /** What a log likelihood falls by over a standard error. */
  private static final double FALL_OF_A_STANDARD_ERROR = 0.5;

  /** A noise that may as well be this many times larger or smaller is not known. */
  static final double VAGUE = 2;

  private final double[] seconds;
  private final boolean[] startsPiece;

  /** The data, then the regressors: the filter takes them together. */
  private final double[][] columns;

  private final double memorySeconds;
  private final double smallest;

  WanderLikelihood(
      double[] seconds,
      boolean[] startsPiece,
      double[] data,
      double[][] regressors,
      double memorySeconds) {
    this.seconds = seconds;
    this.startsPiece = startsPiece;
    this.columns = new double[regressors.length + 1][];
    columns[0] = data;
    System.arraycopy(regressors, 0, columns, 1, regressors.length);
    this.memorySeconds = memorySeconds;
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
    Whitening whitening = Whitening.of(seconds, startsPiece, ratio, memorySeconds);
    WhiteRegression fit = whitened(whitening);
    double variance = fit.sumOfSquares() / fit.degreesOfFreedom();
    return -0.5
        * (fit.degreesOfFreedom() * Math.log(variance)
            + whitening.logDeterminant()
            + fit.logDeterminant());
  }

  /** Where it is highest within {@code reach} of {@code start}. */
  double highest(double start, double reach) {
    double low = Math.max(WanderNoise.LOWEST_LOG_RATIO, start - reach);
    double high = Math.min(WanderNoise.HIGHEST_LOG_RATIO, start + reach);
    return new BrentOptimizer(1e-9, LOG_RATIO_ACCURACY)
        .optimize(
            new MaxEval(60),
            new UnivariateObjectiveFunction(this::at),
            GoalType.MAXIMIZE,
            new SearchInterval(low, high, Math.max(low, Math.min(high, start))))
        .getPoint();
  }

  /**
   * The model, or the one with more wander whose likelihood is a standard error's below, where none
   * at all is as likely.
   */
  WanderNoise wandering(WanderNoise model) {
    double likeliest = Math.log10(model.ratioPerSecond());
    double highest = at(likeliest);
    if (at(WanderNoise.LOWEST_LOG_RATIO) < highest - FALL_OF_A_STANDARD_ERROR) {
      return model;
    }
    double low = likeliest;
    double high = WanderNoise.HIGHEST_LOG_RATIO;
    while (high - low > CURVATURE_STEP) {
      double middle = (low + high) / 2;
      if (at(middle) < highest - FALL_OF_A_STANDARD_ERROR) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return model(low);
  }

  /** Wander and noise at a ratio. */
  WanderNoise model(double logRatio) {
    double ratio = Math.pow(10, logRatio);
    return new WanderNoise(noiseVariance(ratio), ratio, memorySeconds);
  }

  WanderNoise.Measured measured(WanderNoise model) {
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
    return new WanderNoise.Measured(
        model,
        factor < VAGUE
            ? Optional.of(new Estimate(sigma, sigma / factor, sigma * factor))
            : Optional.empty());
  }

  private double noiseVariance(double ratio) {
    WhiteRegression fit = regression(ratio);
    return fit.sumOfSquares() / fit.degreesOfFreedom();
  }

  private WhiteRegression regression(double ratio) {
    return whitened(Whitening.of(seconds, startsPiece, ratio, memorySeconds));
  }

  private WhiteRegression whitened(Whitening whitening) {
    double[][] white = whitening.apply(columns);
    return WhiteRegression.of(white[0], Arrays.copyOfRange(white, 1, white.length));
  }
}
