package io.github.roundstar.signal;

import java.util.Arrays;

/** A covariance matrix of estimated coefficients. */
public final class Covariance {
  private final double[][] matrix;

  private Covariance(double[][] matrix) {
    this.matrix = matrix;
  }

  /** The covariance of {@code map} times a vector whose covariance is {@code middle}. */
  static Covariance sandwich(double[][] map, double[][] middle) {
    return new Covariance(timesTransposed(timesTransposed(map, middle), map));
  }

  /** {@code left} times the transpose of {@code right}. */
  static double[][] timesTransposed(double[][] left, double[][] right) {
    double[][] product = new double[left.length][right.length];
    for (int i = 0; i < left.length; i++) {
      for (int j = 0; j < right.length; j++) {
        for (int l = 0; l < right[j].length; l++) {
          product[i][j] += left[i][l] * right[j][l];
        }
      }
    }
    return product;
  }

  /** Number of coefficients. */
  public int size() {
    return matrix.length;
  }

  /** Covariance of coefficients {@code i} and {@code j}. */
  public double at(int i, int j) {
    return matrix[i][j];
  }

  /** Standard error of coefficient {@code i}. */
  public double standardError(int i) {
    return Math.sqrt(matrix[i][i]);
  }

  /**
   * This and an error that all coefficients share: something else is known to one standard error
   * only, by which they move so far.
   *
   * @param moved one number per coefficient
   */
  public Covariance plus(double[] moved) {
    Check.sameLength("moves", moved, size());
    double[][] sum = new double[size()][size()];
    for (int i = 0; i < size(); i++) {
      for (int j = 0; j < size(); j++) {
        sum[i][j] = matrix[i][j] + moved[i] * moved[j];
      }
    }
    return new Covariance(sum);
  }

  /** The matrix times a vector of as many numbers. */
  public double[] times(double[] vector) {
    Check.sameLength("vector", vector, size());
    return Arrays.stream(matrix).mapToDouble(row -> LeastSquares.dot(row, vector)).toArray();
  }

  /** Every element times {@code factor}. */
  Covariance times(double factor) {
    double[][] scaled = new double[size()][size()];
    for (int i = 0; i < size(); i++) {
      for (int j = 0; j < size(); j++) {
        scaled[i][j] = factor * matrix[i][j];
      }
    }
    return new Covariance(scaled);
  }
}
