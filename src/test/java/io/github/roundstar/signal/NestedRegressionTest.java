package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What nested columns leave is what one regression on all of them leaves. */
class NestedRegressionTest {
  private static final double[] X = column(1);
  private static final double[] Y = column(0);

  private static double[] column(int j) {
    return Arrays.stream(LeastSquaresTest.NORRIS).mapToDouble(row -> row[j]).toArray();
  }

  private static double[] ones() {
    double[] ones = new double[X.length];
    Arrays.fill(ones, 1);
    return ones;
  }

  /**
   * NIST StRD "Norris", certified residual sum of squares, whichever column stays. With none it is
   * the difference of sums half a million times larger: eight digits are left.
   */
  @Test
  @Tag("published")
  void norrisLineIsReproduced() {
    double certified = 26.6173985294224;
    assertThat(new NestedRegression(Y, new double[][] {ones()}).sumOfSquares(X))
        .isCloseTo(certified, withinPercentage(1e-8));
    assertThat(new NestedRegression(Y, new double[][] {X}).sumOfSquares(ones()))
        .isCloseTo(certified, withinPercentage(1e-8));
    assertThat(new NestedRegression(Y, new double[][] {X, ones()}).sumOfSquares())
        .isCloseTo(certified, withinPercentage(1e-8));
    assertThat(new NestedRegression(Y, new double[0][]).sumOfSquares(ones(), X))
        .isCloseTo(certified, withinPercentage(1e-6));
  }

  @Test
  @Tag("identity")
  void twoColumnsBesideTwoMakeFour() {
    int n = 60;
    double[] data = KnownSeries.unitNoise(n);
    double[][] columns = new double[4][n];
    for (int i = 0; i < n; i++) {
      columns[0][i] = i;
      columns[1][i] = i * i;
      columns[2][i] = Math.sin(0.3 * i) + 0.02 * i;
      columns[3][i] = Math.floor(i / 7.0);
    }
    NestedRegression nested = new NestedRegression(data, new double[][] {columns[0], columns[1]});
    double all = LeastSquares.on(columns).orElseThrow().fit(data).residualSquares();
    assertThat(nested.sumOfSquares(columns[2], columns[3])).isCloseTo(all, within(1e-10));
    assertThat(nested.sumOfSquares(columns[3], columns[2])).isCloseTo(all, within(1e-10));
  }

  @Test
  void repeatedAndEmptyColumnsExplainNothingMore() {
    double[] twice = X.clone();
    NestedRegression nested = new NestedRegression(Y, new double[][] {ones(), X, twice});
    double once = nested.sumOfSquares();
    assertThat(nested.sumOfSquares(new double[X.length], X)).isCloseTo(once, within(1e-8));
    double[] other = new double[X.length];
    other[3] = 1;
    assertThat(nested.sumOfSquares(other, other))
        .isCloseTo(nested.sumOfSquares(other), within(1e-8))
        .isLessThan(once);
  }
}
