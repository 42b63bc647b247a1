package io.github.roundstar.signal;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * The wander-and-noise model the slow way, by its covariance matrix in units of the noise variance
 * and a column of ones per piece, with the matrix algebra of Commons Math.
 */
final class DenseWander {
  private final double[] seconds;
  private final boolean[] starts;
  private final double[] data;
  private final double[][] regressors;
  private final double ratio;
  private final double memorySeconds;
  private final RealMatrix design;
  private final CholeskyDecomposition covariance;
  private final CholeskyDecomposition normal;

  DenseWander(
      double[] seconds, boolean[] starts, double[] data, double[][] regressors, double ratio) {
    this(seconds, starts, data, regressors, ratio, 0);
  }

  private DenseWander(
      double[] seconds,
      boolean[] starts,
      double[] data,
      double[][] regressors,
      double ratio,
      double memorySeconds) {
    this.seconds = seconds;
    this.starts = starts;
    this.data = data;
    this.regressors = regressors;
    this.ratio = ratio;
    this.memorySeconds = memorySeconds;
    this.design = design();
    this.covariance = new CholeskyDecomposition(covarianceMatrix());
    this.normal =
        new CholeskyDecomposition(
            design.transpose().multiply(covariance.getSolver().solve(design)), 1e-9, 1e-300);
  }

  /** Forty uneven samples in three pieces, a slope and a sinusoid beside them. */
  static DenseWander example(double ratio) {
    double[] noise = KnownSeries.unitNoise(40);
    double[] seconds = new double[40];
    boolean[] starts = new boolean[40];
    double[] data = new double[40];
    double[][] regressors = new double[2][40];
    double walk = 0;
    for (int i = 0; i < 40; i++) {
      seconds[i] = 2.5 * i + 0.8 * Math.sin(2.1 * i);
      starts[i] = i == 0 || i == 13 || i == 29;
      walk += 0.6 * Math.cos(5.3 * i);
      data[i] = walk + noise[i] + (starts[i] ? 5 : 0);
      regressors[0][i] = seconds[i] / 10;
      regressors[1][i] = Math.sin(seconds[i] / 6);
    }
    return new DenseWander(seconds, starts, data, regressors, ratio);
  }

  /** The same beside noise whose correlation falls by e in this time. */
  DenseWander remembering(double memory) {
    return new DenseWander(seconds, starts, data, regressors, ratio, memory);
  }

  DenseWander withRatio(double other) {
    return new DenseWander(seconds, starts, data, regressors, other, memorySeconds);
  }

  double[] seconds() {
    return seconds.clone();
  }

  boolean[] starts() {
    return starts.clone();
  }

  double[] data() {
    return data.clone();
  }

  double[][] regressors() {
    return new double[][] {regressors[0].clone(), regressors[1].clone()};
  }

  Whitening whitening() {
    return Whitening.of(seconds, starts, ratio, memorySeconds);
  }

  RealVector coefficients() {
    return normal
        .getSolver()
        .solve(design.transpose().operate(covariance.getSolver().solve(new ArrayRealVector(data))));
  }

  double sumOfSquares() {
    RealVector left = new ArrayRealVector(data).subtract(design.operate(coefficients()));
    return left.dotProduct(covariance.getSolver().solve(left));
  }

  int degreesOfFreedom() {
    return data.length - design.getColumnDimension();
  }

  /** Up to a constant: Harville (1977), J. Am. Stat. Assoc. 72, 320. */
  double restrictedLogLikelihood() {
    int free = degreesOfFreedom();
    return -0.5
        * (free * Math.log(sumOfSquares() / free)
            + logDeterminant(covariance)
            + logDeterminant(normal));
  }

  /** Variance of the logarithm of the noise's variance at a peak, the ratio's error in it. */
  double varianceOfLogNoise(double noiseVariance) {
    double h = 0.02;
    double x = Math.log(noiseVariance);
    double y = Math.log(ratio);
    double middle = likelihoodOfBoth(x, y);
    double xx = (likelihoodOfBoth(x + h, y) - 2 * middle + likelihoodOfBoth(x - h, y)) / (h * h);
    double yy = (likelihoodOfBoth(x, y + h) - 2 * middle + likelihoodOfBoth(x, y - h)) / (h * h);
    double xy =
        (likelihoodOfBoth(x + h, y + h)
                - likelihoodOfBoth(x + h, y - h)
                - likelihoodOfBoth(x - h, y + h)
                + likelihoodOfBoth(x - h, y - h))
            / (4 * h * h);
    return -yy / (xx * yy - xy * xy);
  }

  /** The log likelihood of both parameters, by their logarithms, but for a constant. */
  private double likelihoodOfBoth(double logNoise, double logRatio) {
    DenseWander there = withRatio(Math.exp(logRatio));
    int free = there.degreesOfFreedom();
    double squares = there.sumOfSquares();
    return there.restrictedLogLikelihood()
        + 0.5 * free * Math.log(squares / free)
        - 0.5 * free * logNoise
        - 0.5 * squares * Math.exp(-logNoise);
  }

  double logDeterminantOfDifferences() {
    int steps = data.length - pieces();
    RealMatrix differences = new Array2DRowRealMatrix(steps, data.length);
    int row = 0;
    for (int i = 0; i < data.length; i++) {
      if (!starts[i]) {
        differences.setEntry(row, i, 1);
        differences.setEntry(row++, i - 1, -1);
      }
    }
    RealMatrix product = differences.multiply(covarianceMatrix()).multiply(differences.transpose());
    // Rounding leaves it a little lopsided.
    return logDeterminant(
        new CholeskyDecomposition(product.add(product.transpose()).scalarMultiply(0.5)));
  }

  private RealMatrix covarianceMatrix() {
    RealMatrix matrix = new Array2DRowRealMatrix(data.length, data.length);
    for (int i = 0; i < data.length; i++) {
      for (int j = 0; j < data.length; j++) {
        boolean together = piece(i) == piece(j);
        double common = Math.min(seconds[i], seconds[j]) - seconds[pieceStart(i)];
        matrix.setEntry(i, j, noise(i, j) + (together ? ratio * common : 0));
      }
    }
    return matrix;
  }

  /** Covariance of the noise of two samples, pieces apart from each other. */
  double noise(int i, int j) {
    double apart = Math.abs(seconds[i] - seconds[j]);
    boolean remembered = memorySeconds > 0 && piece(i) == piece(j);
    return i == j ? 1 : remembered ? Math.exp(-apart / memorySeconds) : 0;
  }

  private RealMatrix design() {
    RealMatrix columns = new Array2DRowRealMatrix(data.length, regressors.length + pieces());
    for (int i = 0; i < data.length; i++) {
      for (int j = 0; j < regressors.length; j++) {
        columns.setEntry(i, j, regressors[j][i]);
      }
      columns.setEntry(i, regressors.length + piece(i), 1);
    }
    return columns;
  }

  private int pieces() {
    return piece(data.length - 1) + 1;
  }

  private int piece(int sample) {
    int piece = -1;
    for (int i = 0; i <= sample; i++) {
      piece += starts[i] ? 1 : 0;
    }
    return piece;
  }

  private int pieceStart(int sample) {
    int start = sample;
    while (!starts[start]) {
      start--;
    }
    return start;
  }

  private static double logDeterminant(CholeskyDecomposition cholesky) {
    double[][] lower = cholesky.getL().getData();
    double[] diagonal = new double[lower.length];
    Arrays.setAll(diagonal, i -> lower[i][i]);
    return 2 * Arrays.stream(diagonal).map(Math::log).sum();
  }
}
