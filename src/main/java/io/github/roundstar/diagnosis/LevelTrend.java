package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Estimate;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * How far a level that is read in blocks of time follows a column, beside what it does by itself: a
 * random walk, since the air of one hour is not that of the next, and the scatter of the blocks.
 * Without the walk a step or a slope would be found in every night whose air changes.
 *
 * <p>Generalised least squares at each of some shares of the walk, averaged by the restricted
 * likelihood of that share; all of them are equally likely before.
 *
 * @see "Patterson and Thompson (1971), Biometrika 58, 545, for the restricted likelihood"
 */
final class LevelTrend {
  /** Fewest blocks beyond the columns. */
  private static final int FEWEST = 6;

  /** Variance that the walk gathers over the whole span, over that of a block. */
  private static final double[] WALKS = {0, 0.03, 0.1, 0.3, 1, 3, 10, 30, 100, 300};

  private LevelTrend() {}

  /**
   * The first column's coefficient.
   *
   * @param seconds times of the blocks, ascending [s]
   * @param level one for each block
   * @param columns the one asked for, then those beside it; a constant must be among them
   * @param sigmas half width of the interval in standard errors of a Gaussian
   * @return nothing where the blocks are too few, or the columns cannot be told apart
   */
  static Optional<Estimate> first(
      double[] seconds, double[] level, double[][] columns, double sigmas) {
    int free = level.length - columns.length;
    if (free < FEWEST) {
      return Optional.empty();
    }
    double span = Math.max(1e-9, seconds[seconds.length - 1] - seconds[0]);
    double[] logs = new double[WALKS.length];
    double[] values = new double[WALKS.length];
    double[] variances = new double[WALKS.length];
    double best = Double.NEGATIVE_INFINITY;
    RealMatrix design = new Array2DRowRealMatrix(columns, false).transpose();
    RealVector data = new ArrayRealVector(level);
    for (int w = 0; w < WALKS.length; w++) {
      try {
        CholeskyDecomposition noise =
            new CholeskyDecomposition(covariance(seconds, span, WALKS[w]));
        DecompositionSolver whiten = noise.getSolver();
        RealMatrix weighted = whiten.solve(design);
        CholeskyDecomposition normal =
            new CholeskyDecomposition(symmetric(design.transpose().multiply(weighted)));
        RealVector found = normal.getSolver().solve(weighted.transpose().operate(data));
        RealVector left = data.subtract(design.operate(found));
        double squares = left.dotProduct(whiten.solve(left));
        if (!(squares > 0)) {
          return Optional.empty();
        }
        values[w] = found.getEntry(0);
        variances[w] = squares / free * normal.getSolver().getInverse().getEntry(0, 0);
        logs[w] =
            -0.5
                * (Math.log(noise.getDeterminant())
                    + Math.log(normal.getDeterminant())
                    + free * Math.log(squares));
        best = Math.max(best, logs[w]);
      } catch (NonPositiveDefiniteMatrixException e) {
        return Optional.empty();
      }
    }
    return Optional.of(mixed(logs, best, values, variances, free, sigmas));
  }

  private static Estimate mixed(
      double[] logs, double best, double[] values, double[] variances, int free, double sigmas) {
    double weights = 0;
    double mean = 0;
    for (int w = 0; w < logs.length; w++) {
      double weight = Math.exp(logs[w] - best);
      weights += weight;
      mean += weight * values[w];
    }
    mean /= weights;
    double variance = 0;
    for (int w = 0; w < logs.length; w++) {
      double apart = values[w] - mean;
      variance += Math.exp(logs[w] - best) / weights * (variances[w] + apart * apart);
    }
    double level =
        new org.apache.commons.math3.distribution.NormalDistribution(null, 0, 1)
            .cumulativeProbability(sigmas);
    double half = new TDistribution(null, free).inverseCumulativeProbability(level);
    return Estimate.symmetric(mean, half * Math.sqrt(variance));
  }

  private static RealMatrix covariance(double[] seconds, double span, double walk) {
    int n = seconds.length;
    double[][] values = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double since = Math.min(seconds[i], seconds[j]) - seconds[0];
        values[i][j] = walk * since / span + (i == j ? 1 : 0);
      }
    }
    return new Array2DRowRealMatrix(values, false);
  }

  private static RealMatrix symmetric(RealMatrix matrix) {
    return matrix.add(matrix.transpose()).scalarMultiply(0.5);
  }
}
