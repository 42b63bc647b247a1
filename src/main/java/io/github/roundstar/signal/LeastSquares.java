package io.github.roundstar.signal;

import java.util.Arrays;
import java.util.Optional;

/**
 * Linear regression on given columns. The columns are factored once; any number of value columns
 * can then be fitted to them.
 *
 * <p>The factoring is a Gram-Schmidt QR that repeats a column's projections while they still shrink
 * it, so that the basis is orthogonal to rounding and a leading constant centres the columns after
 * it. Commons Math factors as well but keeps its orthogonal factor to itself or hands it out as n
 * &times; n; the thin one is needed for {@link NeweyWest}.
 *
 * @see "Daniel, Gragg, Kaufman &amp; Stewart (1976), Math. Comp. 30, 772"
 */
public final class LeastSquares {
  /** A column that shrinks to this share of itself is taken as a combination of those before. */
  private static final double DEPENDENT = 1e-11;

  private final double[][] basis;
  private final double[][] map;
  private final boolean constant;

  private LeastSquares(double[][] basis, double[][] triangle, boolean constant) {
    this.basis = basis;
    this.map = inverse(triangle);
    this.constant = constant;
  }

  /**
   * Regression without a constant.
   *
   * @param columns k columns of n numbers each
   * @return absent if n is not above k or a column is zero or a combination of those before it
   * @throws IllegalArgumentException if lengths differ or a number is not finite
   */
  public static Optional<LeastSquares> on(double[]... columns) {
    Check.atLeast("number of columns", columns.length, 1);
    double[][] copies = new double[columns.length][];
    for (int j = 0; j < columns.length; j++) {
      copies[j] = columns[j].clone();
    }
    return factor(copies, false);
  }

  /**
   * Regression with a constant: coefficient 0 is the constant, coefficient j belongs to column j -
   * 1.
   *
   * @param size number n of values, needed when there is no further column
   * @param columns further columns of n numbers each
   * @return absent as for {@link #on}
   * @throws IllegalArgumentException if lengths differ or a number is not finite
   */
  public static Optional<LeastSquares> withConstant(int size, double[]... columns) {
    double[][] copies = new double[columns.length + 1][];
    copies[0] = new double[size];
    Arrays.fill(copies[0], 1);
    for (int j = 0; j < columns.length; j++) {
      copies[j + 1] = columns[j].clone();
    }
    return factor(copies, true);
  }

  private static Optional<LeastSquares> factor(double[][] columns, boolean constant) {
    for (int j = 0; j < columns.length; j++) {
      Check.sameLength("column " + j, columns[j], columns[0].length);
      Check.finite("column " + j, columns[j]);
    }
    double[][] triangle = new double[columns.length][columns.length];
    boolean solvable = columns[0].length > columns.length && orthonormalise(columns, triangle);
    return solvable ? Optional.of(new LeastSquares(columns, triangle, constant)) : Optional.empty();
  }

  private static boolean orthonormalise(double[][] columns, double[][] triangle) {
    for (int j = 0; j < columns.length; j++) {
      double[] column = columns[j];
      double whole = Math.sqrt(dot(column, column));
      double norm = whole;
      double before;
      do {
        before = norm;
        for (int i = 0; i < j; i++) {
          triangle[i][j] += project(column, columns[i]);
        }
        norm = Math.sqrt(dot(column, column));
      } while (norm < 0.5 * before && norm > DEPENDENT * whole);
      if (!(norm > DEPENDENT * whole)) {
        return false;
      }
      triangle[j][j] = norm;
      for (int t = 0; t < column.length; t++) {
        column[t] /= norm;
      }
    }
    return true;
  }

  /**
   * Fits one column of values.
   *
   * @param values as many as the columns have
   * @throws IllegalArgumentException if their number differs or one is not finite
   */
  public LinearFit fit(double[] values) {
    Check.sameLength("values", values, size());
    Check.finite("value", values);
    double[] residuals = values.clone();
    double[] projections = new double[basis.length];
    for (int pass = 0; pass < 2; pass++) {
      for (int j = 0; j < basis.length; j++) {
        projections[j] += project(residuals, basis[j]);
      }
    }
    double explained = 0;
    double[] coefficients = new double[basis.length];
    for (int j = 0; j < basis.length; j++) {
      explained += j == 0 && constant ? 0 : projections[j] * projections[j];
      coefficients[j] = dot(map[j], projections);
    }
    return new LinearFit(this, coefficients, residuals, explained);
  }

  /** Number n of values that a fit takes. */
  public int size() {
    return basis[0].length;
  }

  /** Number k of coefficients, the constant included. */
  public int coefficientCount() {
    return basis.length;
  }

  /** Orthonormal column j at row t. */
  double basis(int j, int t) {
    return basis[j][t];
  }

  /** Takes projections on the basis to coefficients; not to be written to. */
  double[][] map() {
    return map;
  }

  /** Takes the part along a unit vector out of {@code column} and returns its length. */
  static double project(double[] column, double[] unit) {
    double along = dot(column, unit);
    for (int t = 0; t < column.length; t++) {
      column[t] -= along * unit[t];
    }
    return along;
  }

  /** Scalar product. Four sums at a time: one alone would wait for each addition. */
  public static double dot(double[] a, double[] b) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int t = 0;
    for (; t + 3 < a.length; t += 4) {
      s0 += a[t] * b[t];
      s1 += a[t + 1] * b[t + 1];
      s2 += a[t + 2] * b[t + 2];
      s3 += a[t + 3] * b[t + 3];
    }
    for (; t < a.length; t++) {
      s0 += a[t] * b[t];
    }
    return s0 + s1 + (s2 + s3);
  }

  /**
   * Two scalar products at once, those of {@code a} with {@code b} and with {@code c}, into {@code
   * out} from {@code at} on: the same bits as by {@link #dot}, in two thirds of the time.
   */
  static void dots(double[] a, double[] b, double[] c, double[] out, int at) {
    double b0 = 0;
    double b1 = 0;
    double b2 = 0;
    double b3 = 0;
    double c0 = 0;
    double c1 = 0;
    double c2 = 0;
    double c3 = 0;
    int t = 0;
    for (; t + 3 < a.length; t += 4) {
      double a0 = a[t];
      double a1 = a[t + 1];
      double a2 = a[t + 2];
      double a3 = a[t + 3];
      b0 += a0 * b[t];
      b1 += a1 * b[t + 1];
      b2 += a2 * b[t + 2];
      b3 += a3 * b[t + 3];
      c0 += a0 * c[t];
      c1 += a1 * c[t + 1];
      c2 += a2 * c[t + 2];
      c3 += a3 * c[t + 3];
    }
    for (; t < a.length; t++) {
      b0 += a[t] * b[t];
      c0 += a[t] * c[t];
    }
    out[at] = b0 + b1 + (b2 + b3);
    out[at + 1] = c0 + c1 + (c2 + c3);
  }

  private static double[][] inverse(double[][] upper) {
    int k = upper.length;
    double[][] inverse = new double[k][k];
    for (int j = 0; j < k; j++) {
      inverse[j][j] = 1 / upper[j][j];
      for (int i = j - 1; i >= 0; i--) {
        double sum = 0;
        for (int l = i + 1; l <= j; l++) {
          sum += upper[i][l] * inverse[l][j];
        }
        inverse[i][j] = -sum / upper[i][i];
      }
    }
    return inverse;
  }
}
