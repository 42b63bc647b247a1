package io.github.roundstar.signal;

import java.util.Arrays;

/**
 * Least squares of white data on columns of which some stay and others differ from trial to trial:
 * the ones that stay are taken out of the data once. For the many trials of a likelihood, of which
 * only the sum of squares is wanted; {@link WhiteRegression} gives the rest.
 */
public final class NestedRegression {
  /** A column that shrinks to this share of its square is a combination of those before it. */
  private static final double DEPENDENT = 1e-12;

  private final double[][] basis;
  private final double[] left;
  private final double leftSquares;

  /**
   * Takes out what stays.
   *
   * @param data white data, m values
   * @param staying columns of m values each; one that repeats the others is left out
   */
  public NestedRegression(double[] data, double[][] staying) {
    double[][] units = new double[staying.length][];
    int independent = 0;
    for (double[] column : staying) {
      double[] unit = column.clone();
      double whole = LeastSquares.dot(unit, unit);
      // Twice, so that the rest is orthogonal to rounding.
      takeOut(units, independent, unit);
      takeOut(units, independent, unit);
      double rest = LeastSquares.dot(unit, unit);
      if (rest > DEPENDENT * whole) {
        double norm = Math.sqrt(rest);
        for (int i = 0; i < unit.length; i++) {
          unit[i] /= norm;
        }
        units[independent++] = unit;
      }
    }
    basis = Arrays.copyOf(units, independent);
    left = data.clone();
    takeOut(basis, independent, left);
    takeOut(basis, independent, left);
    leftSquares = LeastSquares.dot(left, left);
  }

  private static void takeOut(double[][] units, int count, double[] column) {
    for (int j = 0; j < count; j++) {
      LeastSquares.project(column, units[j]);
    }
  }

  /**
   * What columns leave of the data beside those that stay.
   *
   * @param columns of m values each
   * @return sum of the residuals' squares, in the square of the data's unit
   */
  public double sumOfSquares(double[]... columns) {
    int k = columns.length;
    double[][] along = new double[k][basis.length];
    double[][] root = new double[k][k];
    double[] solved = new double[k];
    double squares = leftSquares;
    for (int a = 0; a < k; a++) {
      for (int j = 0; j < basis.length; j++) {
        along[a][j] = LeastSquares.dot(columns[a], basis[j]);
      }
      double explained = LeastSquares.dot(columns[a], left);
      for (int b = 0; b <= a; b++) {
        double product = LeastSquares.dot(columns[a], columns[b]);
        double whole = product;
        product -= LeastSquares.dot(along[a], along[b]);
        for (int c = 0; c < b; c++) {
          product -= root[a][c] * root[b][c];
        }
        if (b < a) {
          root[a][b] = root[b][b] == 0 ? 0 : product / root[b][b];
          explained -= root[a][b] * solved[b];
        } else if (product > DEPENDENT * whole) {
          root[a][a] = Math.sqrt(product);
          solved[a] = explained / root[a][a];
          squares -= solved[a] * solved[a];
        }
      }
    }
    return squares;
  }
}
