package io.github.roundstar.signal;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BracketFinder;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * The restricted log likelihood of a wandering series with noise of a given memory, as a function
 * of the ratio of both, the linear model concentrated out. It keeps what it works out, for one
 * thread.
 *
 * @see "Harville (1977), J. Am. Stat. Assoc. 72, 320"
 */
final class WanderLikelihood {
  /** Far inside the ratio's standard error, which is a tenth of a decade at best [decades]. */
  private static final double LOG_RATIO_ACCURACY = 1e-6;

  /** First step of a search uphill [decades]. */
  private static final double STRIDE = 0.1;

  /** How many times the last step a further one may be. */
  private static final double MOST_GROWTH = 8;

  private static final int MOST_EVALUATIONS = 80;

  private final double[] seconds;
  private final boolean[] startsPiece;

  /** The data, then the regressors: the filter takes them together. */
  private final double[][] columns;

  private final double memorySeconds;
  private final double smallest;

  /** The columns made white with the last ratio. */
  private double[][] white;

  /** What was worked out so far, by ratio [decades]. */
  private final Map<Double, Value> values = new HashMap<>();

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

  /** Whether steps are left over, and differ by more than rounding, as seen with this ratio. */
  boolean informative(double logRatio) {
    Value value = value(logRatio);
    return value.degreesOfFreedom() > 1 && value.noiseVariance() > smallest;
  }

  double at(double logRatio) {
    return value(logRatio).logLikelihood();
  }

  /** The log likelihood at a ratio, and the noise's variance that goes with it. */
  private record Value(double logLikelihood, double noiseVariance, int degreesOfFreedom) {}

  private Value value(double logRatio) {
    Value value = values.get(logRatio);
    if (value == null) {
      value = filtered(logRatio);
      values.put(logRatio, value);
    }
    return value;
  }

  private Value filtered(double logRatio) {
    Whitening whitening = Whitening.of(seconds, startsPiece, Math.pow(10, logRatio), memorySeconds);
    if (white == null) {
      white = new double[columns.length][whitening.size()];
    }
    whitening.apply(columns, white);
    WhiteRegression fit =
        WhiteRegression.inPlace(white[0], Arrays.copyOfRange(white, 1, white.length));
    double variance = fit.sumOfSquares() / fit.degreesOfFreedom();
    double logLikelihood =
        -0.5
            * (fit.degreesOfFreedom() * Math.log(variance)
                + whitening.logDeterminant()
                + fit.logDeterminant());
    return new Value(logLikelihood, variance, fit.degreesOfFreedom());
  }

  /** The peak that lies uphill of {@code start}, or the bound of the ratio that does. */
  double highest(double start) {
    double from = within(start);
    // The first step must not lead out of the bounds, where all is level.
    double to = from > 0 ? from - STRIDE : from + STRIDE;
    BracketFinder bracket = new BracketFinder(MOST_GROWTH, MOST_EVALUATIONS);
    bracket.search(this::atOrBound, GoalType.MAXIMIZE, from, to);
    double low = within(bracket.getLo());
    double high = within(bracket.getHi());
    double middle = within(bracket.getMid());
    if (middle == low || middle == high) {
      // A leap to the bound may have passed over the peak: then it goes downhill to the bound.
      double inward = Math.min(STRIDE, (high - low) / 2);
      double before = middle == low ? middle + inward : middle - inward;
      if (at(before) <= at(middle)) {
        return middle;
      }
      middle = before;
    }
    return new BrentOptimizer(1e-9, LOG_RATIO_ACCURACY)
        .optimize(
            new MaxEval(MOST_EVALUATIONS),
            new UnivariateObjectiveFunction(this::at),
            GoalType.MAXIMIZE,
            new SearchInterval(low, high, middle))
        .getPoint();
  }

  /** Beyond its bounds the ratio makes no difference, as a search takes it. */
  private double atOrBound(double logRatio) {
    return at(within(logRatio));
  }

  private static double within(double logRatio) {
    return Math.max(
        WanderNoise.LOWEST_LOG_RATIO, Math.min(WanderNoise.HIGHEST_LOG_RATIO, logRatio));
  }

  /** Wander and noise at a ratio. */
  WanderNoise model(double logRatio) {
    return new WanderNoise(value(logRatio).noiseVariance(), Math.pow(10, logRatio), memorySeconds);
  }
}
