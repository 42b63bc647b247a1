package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Regression agrees with the certified values of the NIST Statistical Reference Datasets (linear
 * regression), <a href="https://www.itl.nist.gov/div898/strd/">NIST/ITL</a>.
 */
class LeastSquaresTest {
  /** NIST StRD "Norris": y, x. */
  static final double[][] NORRIS =
      rows(
          """
          0.1,0.2; 338.8,337.4; 118.1,118.2; 888.0,884.6; 9.2,10.1; 228.1,226.5; 668.5,666.3;
          998.5,996.3; 449.1,448.6; 778.9,777.0; 559.2,558.2; 0.3,0.4; 0.1,0.6; 778.1,775.5;
          668.8,666.9; 339.3,338.0; 448.9,447.5; 10.8,11.6; 557.7,556.0; 228.3,228.1; 998.0,995.8;
          888.8,887.6; 119.6,120.2; 0.3,0.3; 0.6,0.3; 557.6,556.8; 339.3,339.1; 888.0,887.2;
          998.5,999.0; 778.9,779.0; 10.2,11.1; 117.6,118.3; 228.9,229.2; 668.4,669.1; 449.2,448.9;
          0.2,0.5
          """);

  private static final double[][] LONGLEY =
      rows(
          """
          60323,83.0,234289,2356,1590,107608,1947; 61122,88.5,259426,2325,1456,108632,1948;
          60171,88.2,258054,3682,1616,109773,1949; 61187,89.5,284599,3351,1650,110929,1950;
          63221,96.2,328975,2099,3099,112075,1951; 63639,98.1,346999,1932,3594,113270,1952;
          64989,99.0,365385,1870,3547,115094,1953; 63761,100.0,363112,3578,3350,116219,1954;
          66019,101.2,397469,2904,3048,117388,1955; 67857,104.6,419180,2822,2857,118734,1956;
          68169,108.4,442769,2936,2798,120445,1957; 66513,110.8,444546,4681,2637,121950,1958;
          68655,112.6,482704,3813,2552,123366,1959; 69564,114.2,502601,3931,2514,125368,1960;
          69331,115.7,518173,4806,2572,127852,1961; 70551,116.9,554894,4007,2827,130081,1962
          """);

  private static final double[] PONTIUS = {
    .11019, .21956, .32949, .43899, .54803, .65694, .76562, .87487, .98292, 1.09146, 1.20001,
    1.30822, 1.41599, 1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844, .11052, .22018,
    .32939, .43886, .54798, .65739, .76596, .87474, .98300, 1.09150, 1.20004, 1.30818, 1.41613,
    1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829
  };

  @Test
  @Tag("published")
  void norrisLineIsReproduced() {
    LinearFit fit = withConstant(NORRIS);
    check(fit.coefficients(), 1e-12, -0.262323073774029, 1.00211681802045);
    check(errors(fit), 1e-12, 0.232818234301152, 0.429796848199937E-03);
    check(fit.residualStandardDeviation(), 1e-12, 0.884796396144373);
    check(fit.rSquared(), 1e-12, 0.999993745883712);
    check(fit.residualSquares(), 1e-12, 26.6173985294224);
  }

  @Test
  @Tag("published")
  void pontiusParabolaIsReproduced() {
    double[][] rows = new double[40][];
    for (int i = 0; i < 40; i++) {
      double x = 150000.0 * (i % 20 + 1);
      rows[i] = new double[] {PONTIUS[i], x, x * x};
    }
    LinearFit fit = withConstant(rows);
    check(
        fit.coefficients(),
        1e-10,
        0.673565789473684E-03,
        0.732059160401003E-06,
        -0.316081871345029E-14);
    check(errors(fit), 1e-10, 0.107938612033077E-03, 0.157817399981659E-09, 0.486652849992036E-16);
    check(fit.residualStandardDeviation(), 1e-10, 0.205177424076185E-03);
    check(fit.rSquared(), 1e-12, 0.999999900178537);
  }

  @Test
  @Tag("published")
  void linesThroughZeroAreReproduced() {
    double[][] first = new double[11][];
    for (int i = 0; i < 11; i++) {
      first[i] = new double[] {130 + i, 60 + i};
    }
    LinearFit fit = withoutConstant(first);
    check(fit.coefficient(0), 1e-12, 2.07438016528926);
    check(fit.standardError(0), 1e-12, 0.165289256198347E-01);
    check(fit.residualStandardDeviation(), 1e-12, 3.56753034006338);
    check(fit.rSquared(), 1e-12, 0.999365492298663);

    LinearFit second = withoutConstant(new double[][] {{3, 4}, {4, 5}, {4, 6}});
    check(second.coefficient(0), 1e-12, 0.727272727272727);
    check(second.standardError(0), 1e-12, 0.420827318078432E-01);
    check(second.residualStandardDeviation(), 1e-12, 0.369274472937998);
    check(second.rSquared(), 1e-12, 0.993348115299335);
  }

  @Test
  @Tag("published")
  void longleysNearlyDependentColumnsAreReproduced() {
    LinearFit fit = withConstant(LONGLEY);
    check(
        fit.coefficients(),
        1e-10,
        -3482258.63459582,
        15.0618722713733,
        -0.358191792925910E-01,
        -2.02022980381683,
        -1.03322686717359,
        -0.511041056535807E-01,
        1829.15146461355);
    check(
        errors(fit),
        1e-10,
        890420.383607373,
        84.9149257747669,
        0.334910077722432E-01,
        0.488399681651699,
        0.214274163161675,
        0.226073200069370,
        455.478499142212);
    check(fit.residualStandardDeviation(), 1e-10, 304.854073561965);
    check(fit.rSquared(), 1e-12, 0.995479004577296);
  }

  @Test
  @Tag("identity")
  void noiseFreeCoefficientsComeBackAndResidualsAreOrthogonal() {
    Random random = new Random(5);
    int n = 3000;
    double[][] columns = new double[8][n];
    double[] values = new double[n];
    for (int t = 0; t < n; t++) {
      values[t] = 3;
      for (int j = 0; j < 8; j++) {
        columns[j][t] = 50 + random.nextGaussian() * Math.pow(10, j - 4);
        values[t] += (j - 3) * columns[j][t];
      }
    }
    LeastSquares design = LeastSquares.withConstant(n, columns).orElseThrow();
    LinearFit exact = design.fit(values);
    for (int j = 0; j < 8; j++) {
      assertThat(exact.coefficient(j + 1)).isCloseTo(j - 3, within(1e-7));
    }
    for (int t = 0; t < n; t++) {
      values[t] += random.nextGaussian();
    }
    LinearFit noisy = design.fit(values);
    for (double[] column : columns) {
      double scale = Math.sqrt(LeastSquares.dot(column, column));
      assertThat(LeastSquares.dot(column, noisy.residuals()) / scale).isCloseTo(0, within(1e-11));
    }
    assertThat(noisy.covariance().standardError(4))
        .isCloseTo(noisy.standardError(4), within(1e-12));
  }

  @Test
  void aConstantAloneIsTheMean() {
    LinearFit fit = LeastSquares.withConstant(4).orElseThrow().fit(new double[] {1, 2, 3, 6});
    assertThat(fit.coefficient(0)).isCloseTo(3, within(1e-15));
    assertThat(fit.rSquared()).isZero();
    assertThat(fit.degreesOfFreedom()).isEqualTo(3);
  }

  @Test
  void dependentOrTooManyColumnsHaveNoFit() {
    double[] ramp = {1, 2, 3, 4, 5};
    double[] steeper = {3, 5, 7, 9, 11};
    assertThat(LeastSquares.withConstant(5, ramp, steeper)).isEmpty();
    assertThat(LeastSquares.on(ramp, steeper)).isPresent();
    assertThat(LeastSquares.on(new double[5])).isEmpty();
    assertThat(LeastSquares.withConstant(2, new double[] {1, 2})).isEmpty();
    assertThat(LeastSquares.withConstant(0)).isEmpty();
  }

  @Test
  void columnsAreCheckedAndLeftAlone() {
    double[] ramp = {1, 2, 3};
    LeastSquares.on(ramp).orElseThrow().fit(ramp);
    assertThat(ramp).containsExactly(1, 2, 3);
    assertThatThrownBy(() -> LeastSquares.withConstant(4, ramp)).hasMessage("column 1 has 3 of 4");
    assertThatThrownBy(() -> LeastSquares.on(new double[] {1, Double.NaN, 2}))
        .hasMessageContaining("column 0 [1] = NaN");
    assertThatThrownBy(() -> LeastSquares.on()).hasMessageContaining("at least 1");
    assertThatThrownBy(
            () -> LeastSquares.on(ramp).orElseThrow().fit(new double[] {1, 2, Double.NaN}))
        .hasMessageContaining("value [2] = NaN");
    assertThatThrownBy(() -> LeastSquares.on(ramp).orElseThrow().fit(new double[2]))
        .hasMessage("values has 2 of 3");
  }

  private static double[][] rows(String text) {
    return Arrays.stream(text.strip().split(";"))
        .map(row -> Arrays.stream(row.split(",")).mapToDouble(Double::parseDouble).toArray())
        .toArray(double[][]::new);
  }

  private static double[] column(double[][] rows, int j) {
    return Arrays.stream(rows).mapToDouble(row -> row[j]).toArray();
  }

  private static double[][] regressors(double[][] rows) {
    double[][] columns = new double[rows[0].length - 1][];
    for (int j = 0; j < columns.length; j++) {
      columns[j] = column(rows, j + 1);
    }
    return columns;
  }

  private static LinearFit withConstant(double[][] rows) {
    return LeastSquares.withConstant(rows.length, regressors(rows))
        .orElseThrow()
        .fit(column(rows, 0));
  }

  private static LinearFit withoutConstant(double[][] rows) {
    return LeastSquares.on(regressors(rows)).orElseThrow().fit(column(rows, 0));
  }

  private static double[] errors(LinearFit fit) {
    double[] errors = new double[fit.coefficients().length];
    for (int j = 0; j < errors.length; j++) {
      errors[j] = fit.standardError(j);
    }
    return errors;
  }

  private static void check(double[] actual, double relative, double... certified) {
    assertThat(actual).hasSameSizeAs(certified);
    for (int j = 0; j < certified.length; j++) {
      check(actual[j], relative, certified[j]);
    }
  }

  private static void check(double actual, double relative, double certified) {
    assertThat(actual).isCloseTo(certified, within(relative * Math.abs(certified)));
  }
}
