package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An ellipse is called long only when chance would not have made it so. */
class ErrorEllipseTest {
  /** By hand, divisor 4. */
  @Test
  @Tag("identity")
  void shapeIsTheCovarianceAboutTheMeans() {
    ErrorEllipse ellipse =
        ErrorEllipse.of(new double[] {11, 13, 11, 13}, new double[] {1, 5, 3, 7});
    assertThat(ellipse.shape()).isEqualTo(new CovarianceEllipse(1, 5, 2));
  }

  /**
   * Simulated Gaussian scatter of known elongation toward 30 degrees, independent or
   * autoregressive. The interval covers the truth on about 95 of 100, a circle is not given an
   * angle on about 95, and a clear ellipse nearly always is.
   */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource({
    "1.00, -0.4, 1500", "1.00, 0.0, 1500", "1.00, 0.6, 1500", "1.00, 0.9, 5000",
    "1.05, -0.4, 1500", "1.05, 0.0, 1500", "1.05, 0.6, 1500", "1.05, 0.9, 5000",
    "1.40, -0.4, 1500", "1.40, 0.0, 1500", "1.40, 0.6, 1500", "1.40, 0.9, 5000"
  })
  void intervalCoversTheTruth(double truth, double correlation, int n) {
    Random random = new Random(8);
    int covered = 0;
    int angled = 0;
    int trials = 400;
    for (int trial = 0; trial < trials; trial++) {
      ErrorEllipse ellipse = simulated(truth, correlation, n, random);
      covered += ellipse.elongation().orElseThrow().covers(truth) ? 1 : 0;
      angled += ellipse.positionAngleDegrees().isPresent() ? 1 : 0;
    }
    assertThat(covered / (double) trials).isBetween(0.92, 0.98);
    if (truth == 1) {
      assertThat(angled / (double) trials).isBetween(0.02, 0.08);
    } else if (truth == 1.4) {
      assertThat(angled / (double) trials).isGreaterThan(0.95);
    }
  }

  @Test
  @Tag("identity")
  void angleIsThatOfTheLongAxis() {
    ErrorEllipse ellipse = simulated(2, 0.3, 20_000, new Random(1));
    assertThat(ellipse.positionAngleDegrees().orElseThrow()).isCloseTo(30, within(1.5));
    assertThat(ellipse.shape().minorSigma()).isCloseTo(1 / Math.sqrt(1 - 0.09), within(0.03));
  }

  @Test
  void veryThinEllipsesKeepAFiniteInterval() {
    Random random = new Random(4);
    double[] east = new double[500];
    double[] north = new double[500];
    for (int i = 0; i < 500; i++) {
      east[i] = random.nextGaussian();
      north[i] = 2 * east[i] + 1e-6 * random.nextGaussian();
    }
    ErrorEllipse thin = ErrorEllipse.of(east, north);
    assertThat(thin.elongation().orElseThrow().covers(5e6)).isTrue();
    assertThat(ErrorEllipse.of(east, east).elongation()).isEmpty();
    assertThat(ErrorEllipse.of(east, east).positionAngleDegrees().orElseThrow())
        .isCloseTo(45, within(1e-9));
    assertThat(ErrorEllipse.of(new double[] {1}, new double[] {2}).elongation()).isEmpty();
  }

  @Test
  void lengthsMustAgree() {
    assertThatThrownBy(() -> ErrorEllipse.of(new double[3], new double[2]))
        .hasMessage("north has 2 of 3");
  }

  private static ErrorEllipse simulated(
      double elongation, double correlation, int n, Random random) {
    double[] east = new double[n];
    double[] north = new double[n];
    double along = 0;
    double across = 0;
    for (int i = -100; i < n; i++) {
      along = correlation * along + random.nextGaussian();
      across = correlation * across + random.nextGaussian();
      if (i >= 0) {
        east[i] = 3 + elongation * along * 0.5 + across * Math.sqrt(0.75);
        north[i] = elongation * along * Math.sqrt(0.75) - across * 0.5;
      }
    }
    return ErrorEllipse.of(east, north);
  }
}
