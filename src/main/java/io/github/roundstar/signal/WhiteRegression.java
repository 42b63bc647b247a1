package io.github.roundstar.signal;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;

/**
 * Least squares of white data on regressors that went through the same {@link Whitening}, by the
 * normal equations of columns scaled to unit length: the many evaluations of a likelihood need no
 * more accuracy than that, and want speed.
 *
 * @param coefficients one per regressor, in the data's unit over the regressor's
 * @param residuals what the regressors leave of the data
 * @param sumOfSquares of the residuals
 * @param logDeterminant logarithm of the determinant of X'X
 */
public record WhiteRegression(
    double[] coefficients, double[] residuals, double sumOfSquares, double logDeterminant) {
  /** Added to unit pivots, so that a column that repeats the others gets a finite coefficient. */
  private static final double RIDGE = 1e-12;

  /**
   * Fits.
   *
   * @param data white data, m values
   * @param regressors columns of m values each; the arrays are only read
   */
  public static WhiteRegression of(double[] data, double[][] regressors) {
    return inPlace(data.clone(), regressors);
  }

  /** The same, for which the data become the residuals. */
  static WhiteRegression inPlace(double[] data, double[][] regressors) {
    int k = regressors.length;
    if (k == 0) {
      return new WhiteRegression(new double[0], data, LeastSquares.dot(data, data), 0);
    }
    double[][] products = products(regressors);
    double[] length = new double[k];
    double logScale = 0;
    for (int j = 0; j < k; j++) {
      double norm = Math.sqrt(products[j][j]);
      length[j] = norm == 0 ? 1 : norm;
      logScale += 2 * Math.log(length[j]);
    }
    CholeskyDecomposition cholesky =
        new CholeskyDecomposition(
            new Array2DRowRealMatrix(gram(products, length), false), 1e-10, RIDGE / 10);
    double[] coefficients = solve(cholesky.getSolver(), data, regressors, length);
    for (int j = 0; j < k; j++) {
      double coefficient = coefficients[j];
      double[] regressor = regressors[j];
      for (int i = 0; i < data.length; i++) {
        data[i] -= coefficient * regressor[i];
      }
    }
    return new WhiteRegression(
        coefficients,
        data,
        LeastSquares.dot(data, data),
        Math.log(cholesky.getDeterminant()) + logScale);
  }

  /** Number of white steps. */
  public int steps() {
    return residuals.length;
  }

  /** Steps less regressors. */
  public int degreesOfFreedom() {
    return residuals.length - coefficients.length;
  }

  private static double[] solve(
      DecompositionSolver solver, double[] data, double[][] regressors, double[] length) {
    double[] right = new double[length.length];
    for (int j = 0; j < right.length; j++) {
      right[j] = LeastSquares.dot(regressors[j], data) / length[j];
    }
    double[] coefficients = solver.solve(new ArrayRealVector(right, false)).toArray();
    for (int j = 0; j < right.length; j++) {
      coefficients[j] /= length[j];
    }
    return coefficients;
  }

  /** Scalar products of all pairs: those of column a with columns up to a. */
  private static double[][] products(double[][] columns) {
    double[][] products = new double[columns.length][];
    for (int a = 0; a < columns.length; a++) {
      products[a] = new double[a + 1];
      int b = 0;
      for (; b < a; b += 2) {
        LeastSquares.dots(columns[a], columns[b], columns[b + 1], products[a], b);
      }
      if (b == a) {
        products[a][a] = LeastSquares.dot(columns[a], columns[a]);
      }
    }
    return products;
  }

  private static double[][] gram(double[][] products, double[] length) {
    int k = length.length;
    double[][] gram = new double[k][k];
    for (int a = 0; a < k; a++) {
      for (int b = 0; b <= a; b++) {
        gram[a][b] = products[a][b] / (length[a] * length[b]);
        gram[b][a] = gram[a][b];
      }
      gram[a][a] += RIDGE;
    }
    return gram;
  }
}
