package io.github.roundstar.motion.posterior;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;

/** A = L L' of a small symmetric positive matrix; L stands below and on the diagonal. */
final class Cholesky {
  private final double[][] lower;

  private Cholesky(double[][] lower) {
    this.lower = lower;
  }

  /** Takes over the matrix, of which the part below the diagonal is read. */
  static Cholesky inPlace(double[][] a) {
    eliminate(a, 0, a.length);
    return new Cholesky(a);
  }

  /** Takes over L. */
  static Cholesky of(double[][] lower) {
    return new Cholesky(lower);
  }

  /**
   * Some steps alone: the rows up to {@code to} become those of L, the others what is left of them
   * behind their part of it.
   *
   * @param from so many have been taken before
   */
  static void eliminate(double[][] a, int from, int to) {
    for (int i = from; i < a.length; i++) {
      double[] row = a[i];
      for (int j = from; j <= i; j++) {
        double[] other = a[j];
        double sum = row[j];
        int until = Math.min(j, to);
        for (int l = from; l < until; l++) {
          sum -= row[l] * other[l];
        }
        if (j >= to) {
          row[j] = sum;
        } else if (i == j) {
          // Priors are proper, so rounding alone can bring a pivot to nothing.
          row[i] = Math.sqrt(Math.max(sum, 1e-14 * row[i] + Double.MIN_NORMAL));
        } else {
          row[j] = sum / other[j];
        }
      }
    }
  }

  /** Solves L x = b, b becoming x. */
  void forward(double[] b) {
    for (int i = 0; i < lower.length; i++) {
      double[] row = lower[i];
      double sum = b[i];
      for (int l = 0; l < i; l++) {
        sum -= row[l] * b[l];
      }
      b[i] = sum / row[i];
    }
  }

  /** Solves L' x = b, b becoming x. */
  void backward(double[] b) {
    for (int i = lower.length - 1; i >= 0; i--) {
      double x = b[i] / lower[i][i];
      b[i] = x;
      double[] row = lower[i];
      for (int l = 0; l < i; l++) {
        b[l] -= row[l] * x;
      }
    }
  }

  /** Solves a small system that need not be symmetric. */
  static double[] solveAny(double[][] a, double[] b) {
    return new LUDecomposition(new Array2DRowRealMatrix(a, false))
        .getSolver()
        .solve(new ArrayRealVector(b, false))
        .toArray();
  }
}
