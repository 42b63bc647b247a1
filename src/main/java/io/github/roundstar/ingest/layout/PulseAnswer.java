package io.github.roundstar.ingest.layout;

import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * How a pulse follows from the two offsets of a row: p = a first + b second + c, by least squares
 * over the rows with a pulse.
 *
 * @param rows rows with a pulse and offsets
 * @param first a, in pulse units per offset unit
 * @param second b
 * @param share share of the pulses' variance that the offsets explain (R squared); 0 where it
 *     cannot be had
 */
record PulseAnswer(int rows, double first, double second, double share) {
  private static final PulseAnswer NONE = new PulseAnswer(0, 0, 0, 0);
  private static final int FEWEST = 8;
  private static final double AXIS_DOMINATES = 2;

  /**
   * Fits.
   *
   * @param lag 0: a row's pulse answers its own offset; 1: that of the row before
   * @param taken rows to use
   */
  static PulseAnswer of(double[] pulse, double[] one, double[] two, int lag, IntPredicate taken) {
    return of(pulse, one, two, lag, IntStream.range(1, pulse.length).filter(taken));
  }

  /** Fits over some rows. */
  static PulseAnswer of(double[] pulse, double[] one, double[] two, int lag, IntStream taken) {
    int[] rows =
        taken
            .filter(i -> i > 0)
            .filter(i -> pulse[i] != 0 && Double.isFinite(pulse[i]))
            .filter(i -> Double.isFinite(one[i - lag]) && Double.isFinite(two[i - lag]))
            .toArray();
    if (rows.length < FEWEST) {
      return new PulseAnswer(rows.length, 0, 0, 0);
    }
    double[][] x = new double[rows.length][];
    double[] y = new double[rows.length];
    double mean = 0;
    for (int r = 0; r < rows.length; r++) {
      int i = rows[r] - lag;
      x[r] = new double[] {one[i], two[i], 1};
      y[r] = pulse[rows[r]];
      mean += y[r] / rows.length;
    }
    try {
      DecompositionSolver solver =
          new QRDecomposition(new Array2DRowRealMatrix(x, false)).getSolver();
      RealVector fit = solver.solve(new ArrayRealVector(y, false));
      return new PulseAnswer(
          rows.length, fit.getEntry(0), fit.getEntry(1), explained(x, y, mean, fit));
    } catch (SingularMatrixException e) {
      return NONE;
    }
  }

  private static double explained(double[][] x, double[] y, double mean, RealVector fit) {
    double left = 0;
    double all = 0;
    for (int r = 0; r < y.length; r++) {
      double model = x[r][0] * fit.getEntry(0) + x[r][1] * fit.getEntry(1) + fit.getEntry(2);
      left += (y[r] - model) * (y[r] - model);
      all += (y[r] - mean) * (y[r] - mean);
    }
    return all > 0 ? Math.max(0, 1 - left / all) : 0;
  }

  /** How it follows the first offset, or the second. */
  double along(boolean ofSecond) {
    return ofSecond ? second : first;
  }

  /** Whether it follows one of the offsets far more than the other. */
  boolean isOwn(boolean ofSecond) {
    return Math.abs(along(ofSecond)) >= AXIS_DOMINATES * Math.abs(along(!ofSecond));
  }

  /** Direction of the offset that calls for a positive pulse, from the first through the second. */
  double degrees() {
    return Math.toDegrees(Math.atan2(second, first));
  }
}
