package io.github.roundstar.signal;

/** What a regression found. Its own errors assume independent residuals of one size. */
public final class LinearFit {
  private final LeastSquares design;
  private final double[] coefficients;
  private final double[] residuals;
  private final double explainedSquares;
  private final double residualSquares;

  LinearFit(
      LeastSquares design, double[] coefficients, double[] residuals, double explainedSquares) {
    this.design = design;
    this.coefficients = coefficients;
    this.residuals = residuals;
    this.explainedSquares = explainedSquares;
    this.residualSquares = LeastSquares.dot(residuals, residuals);
  }

  /** The columns that were fitted. */
  public LeastSquares design() {
    return design;
  }

  /** Coefficient {@code j}; 0 is the constant where there is one. */
  public double coefficient(int j) {
    return coefficients[j];
  }

  /** All coefficients; a new array. */
  public double[] coefficients() {
    return coefficients.clone();
  }

  /** Value minus fit at row {@code i}. */
  public double residual(int i) {
    return residuals[i];
  }

  /** All residuals; a new array. */
  public double[] residuals() {
    return residuals.clone();
  }

  /** Sum of squared residuals. */
  public double residualSquares() {
    return residualSquares;
  }

  /** n - k, at least 1. */
  public int degreesOfFreedom() {
    return design.size() - design.coefficientCount();
  }

  /** Square root of the sum of squared residuals over n - k. */
  public double residualStandardDeviation() {
    return Math.sqrt(residualSquares / degreesOfFreedom());
  }

  /**
   * Explained share of the sum of squares: about the mean when there is a constant, about zero when
   * there is none. 0 for values that do not vary.
   */
  public double rSquared() {
    return explainedSquares == 0 ? 0 : explainedSquares / (explainedSquares + residualSquares);
  }

  /** Covariance of the coefficients for independent residuals of one size. */
  public Covariance covariance() {
    double[][] identity = new double[coefficients.length][coefficients.length];
    for (int j = 0; j < identity.length; j++) {
      identity[j][j] = residualSquares / degreesOfFreedom();
    }
    return Covariance.sandwich(design.map(), identity);
  }

  /** Standard error of coefficient {@code j} for independent residuals of one size. */
  public double standardError(int j) {
    double[] row = design.map()[j];
    return residualStandardDeviation() * Math.sqrt(LeastSquares.dot(row, row));
  }
}
