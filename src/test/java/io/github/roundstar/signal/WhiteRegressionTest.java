package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The quick regression agrees with the careful one and survives repeated columns. */
class WhiteRegressionTest {
  @Test
  @Tag("identity")
  void agreesWithQrOnAWhitenedSlopeAndSinusoid() {
    DenseWander example = DenseWander.example(0.3);
    double[] data = example.whitening().apply(example.data());
    double[][] columns = example.whitening().apply(example.regressors());
    WhiteRegression quick = WhiteRegression.of(data, columns);
    LinearFit careful = LeastSquares.on(columns).orElseThrow().fit(data);
    assertThat(quick.coefficients()).containsExactly(careful.coefficients(), within(1e-10));
    assertThat(quick.residuals()).containsExactly(careful.residuals(), within(1e-10));
    assertThat(quick.sumOfSquares()).isCloseTo(careful.residualSquares(), within(1e-10));
    assertThat(quick.steps()).isEqualTo(37);
    assertThat(quick.degreesOfFreedom()).isEqualTo(35);
  }

  /**
   * NIST StRD "Norris", certified values. The ridge of 1e-12 on unit columns costs the intercept
   * that share of the slope's column, some 3000 times larger: eight digits stay.
   */
  @Test
  @Tag("published")
  void norrisLineIsReproduced() {
    double[] ones = new double[36];
    Arrays.fill(ones, 1);
    double[] x = Arrays.stream(LeastSquaresTest.NORRIS).mapToDouble(row -> row[1]).toArray();
    double[] y = Arrays.stream(LeastSquaresTest.NORRIS).mapToDouble(row -> row[0]).toArray();
    WhiteRegression fit = WhiteRegression.of(y, new double[][] {ones, x});
    assertThat(fit.coefficients()[0]).isCloseTo(-0.262323073774029, withinPercentage(1e-6));
    assertThat(fit.coefficients()[1]).isCloseTo(1.00211681802045, within(1e-11));
    assertThat(fit.sumOfSquares()).isCloseTo(26.6173985294224, within(1e-8));
    double sum = Arrays.stream(x).sum();
    double squares = Arrays.stream(x).map(v -> v * v).sum();
    assertThat(fit.logDeterminant()).isCloseTo(Math.log(36 * squares - sum * sum), within(1e-10));
  }

  @Test
  void repeatedAndEmptyColumnsDoNoHarm() {
    double[] data = KnownSeries.unitNoise(50);
    double[] column = new double[50];
    Arrays.setAll(column, i -> Math.sin(0.3 * i));
    double[][] repeated = {column, column.clone(), new double[50], column.clone()};
    WhiteRegression once = WhiteRegression.of(data, new double[][] {column});
    WhiteRegression often = WhiteRegression.of(data, repeated);
    assertThat(often.coefficients()[0] + often.coefficients()[1] + often.coefficients()[3])
        .isCloseTo(once.coefficients()[0], within(1e-9));
    assertThat(often.coefficients()[2]).isZero();
    assertThat(often.sumOfSquares()).isCloseTo(once.sumOfSquares(), within(1e-9));
    assertThat(often.logDeterminant()).isFinite();
  }

  @Test
  void withoutRegressorsTheDataAreLeft() {
    double[] data = {1, -2, 3};
    WhiteRegression fit = WhiteRegression.of(data, new double[0][]);
    assertThat(fit.residuals()).containsExactly(1, -2, 3);
    assertThat(fit.sumOfSquares()).isEqualTo(14);
    assertThat(fit.logDeterminant()).isZero();
    assertThat(fit.degreesOfFreedom()).isEqualTo(3);
  }
}
