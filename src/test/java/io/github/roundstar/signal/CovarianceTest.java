package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Covariances of coefficients are those of dense matrices and of another regression. */
@Tag("identity")
class CovarianceTest {
  private static final double[] NOISE = KnownSeries.unitNoise(60);
  private static final double[][] COLUMNS = columns();

  private static double[][] columns() {
    double[][] columns = new double[3][60];
    for (int t = 0; t < 60; t++) {
      columns[0][t] = 1;
      columns[1][t] = 0.1 * t;
      columns[2][t] = Math.sin(0.7 * t);
    }
    return columns;
  }

  /** Commons Math's own regression, whose covariance is unscaled. */
  @Test
  void independentResidualsGiveTheUsualCovariance() {
    LinearFit fit = LeastSquares.withConstant(60, COLUMNS[1], COLUMNS[2]).orElseThrow().fit(NOISE);
    OLSMultipleLinearRegression other = new OLSMultipleLinearRegression();
    other.setNoIntercept(true);
    other.newSampleData(NOISE, new Array2DRowRealMatrix(COLUMNS).transpose().getData());
    double[][] unscaled = other.estimateRegressionParametersVariance();
    Covariance covariance = fit.covariance();
    assertThat(covariance.size()).isEqualTo(3);
    assertThat(fit.coefficients())
        .containsExactly(other.estimateRegressionParameters(), within(1e-12));
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        assertThat(covariance.at(i, j))
            .isCloseTo(unscaled[i][j] * other.estimateErrorVariance(), within(1e-13));
      }
      assertThat(covariance.standardError(i))
          .isCloseTo(other.estimateRegressionParametersStandardErrors()[i], within(1e-13));
      assertThat(fit.residual(i)).isCloseTo(other.estimateResiduals()[i], within(1e-12));
    }
  }

  /**
   * (X'X)^-1 M (X'X)^-1, M the sum of x e of pairs of rows, weight 1 - l / (L + 1), times n / (n -
   * k), plus x x' of the rows that are known beforehand.
   */
  @Test
  void rowsKnownBeforehandAddWhatTheyKnow() {
    int lag = 3;
    int samples = 56;
    double[] values = NOISE.clone();
    LeastSquares design = LeastSquares.on(COLUMNS).orElseThrow();
    double[] residuals = Arrays.copyOf(design.fit(values).residuals(), samples);
    RealMatrix x = new Array2DRowRealMatrix(COLUMNS).transpose();
    RealMatrix middle = new Array2DRowRealMatrix(3, 3);
    for (int t = 0; t < samples; t++) {
      for (int u = Math.max(0, t - lag); u <= Math.min(samples - 1, t + lag); u++) {
        double weight = 1 - Math.abs(t - u) / (lag + 1.0);
        double share = weight * residuals[t] * residuals[u] * samples / (samples - 3);
        middle = middle.add(outer(x, t, u).scalarMultiply(share));
      }
    }
    for (int t = samples; t < 60; t++) {
      middle = middle.add(outer(x, t, t));
    }
    RealMatrix inverse = new LUDecomposition(x.transpose().multiply(x)).getSolver().getInverse();
    RealMatrix expected = inverse.multiply(middle).multiply(inverse);
    Covariance covariance = NeweyWest.covarianceWithPriors(design, residuals, lag);
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        assertThat(covariance.at(i, j)).isCloseTo(expected.getEntry(i, j), within(1e-12));
      }
    }
  }

  /** Without such rows it is the corrected one. */
  @Test
  void withoutRowsKnownBeforehandItIsTheCorrectedCovariance() {
    LeastSquares design = LeastSquares.on(COLUMNS).orElseThrow();
    double[] residuals = design.fit(NOISE).residuals();
    Covariance with = NeweyWest.covarianceWithPriors(design, residuals, 2);
    Covariance without = NeweyWest.covarianceCorrected(design, residuals, 2);
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        assertThat(with.at(i, j)).isCloseTo(without.at(i, j), within(1e-14));
      }
    }
  }

  private static RealMatrix outer(RealMatrix rows, int t, int u) {
    return rows.getRowMatrix(t).transpose().multiply(rows.getRowMatrix(u));
  }
}
