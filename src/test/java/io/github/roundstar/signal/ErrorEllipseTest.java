package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
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
  @Tag("slow")
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

  /**
   * What a sample adds is its influence (Hampel 1974): how the figure moves with the sample's
   * weight, here by numeric derivatives of the weighted covariance itself. Their long-run
   * covariance gives the interval and says whether the joint 95 % region, chi-square 5.991 of the
   * usual tables, holds a circle.
   */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource({"0, 0.6", "25, 0.6", "90, -0.4", "115, 0.3", "160, 0"})
  void intervalAndRoundnessFollowFromTheInfluenceOfEachSample(
      double turnedDegrees, double correlation) {
    int roundOnes = 0;
    int longOnes = 0;
    for (double truth = 1; truth < 1.6; truth += 0.02) {
      double[][] points = turned(truth, correlation, 120, turnedDegrees);
      double[][] influence = influence(points);
      double[] figures = figures(points, new double[120]);
      double[][] s = NeweyWest.prewhitenedSum(influence);
      double e1 = figures[0];
      double e2 = figures[1];
      double chiSquare =
          (e1 * e1 * s[1][1] - 2 * e1 * e2 * s[0][1] + e2 * e2 * s[0][0])
              / (s[0][0] * s[1][1] - s[0][1] * s[0][1]);
      double value = Math.exp(figures[2]);
      double factor = Math.exp(1.959964 * Math.sqrt(s[2][2]));
      ErrorEllipse ellipse = ErrorEllipse.of(points[0], points[1]);
      Estimate elongation = ellipse.elongation().orElseThrow();
      assertThat(elongation.value()).isCloseTo(value, within(1e-9));
      assertThat(elongation.hi95()).isCloseTo(value * factor, within(1e-6));
      boolean isLong = chiSquare > 5.991 && value / factor > 1;
      assertThat(elongation.lo95()).isCloseTo(isLong ? value / factor : 1, within(1e-6));
      assertThat(ellipse.positionAngleDegrees().isPresent()).isEqualTo(isLong);
      roundOnes += isLong ? 0 : 1;
      longOnes += isLong ? 1 : 0;
    }
    assertThat(roundOnes).isPositive();
    assertThat(longOnes).isPositive();
  }

  /** Independent Gaussian: the logarithm of a deviation has variance 1 / 2n, of a ratio 1 / n. */
  @Test
  @Tag("identity")
  void halfAnIntervalOfIndependentSamplesIsOneOverTheRootOfTheirNumber() {
    Estimate elongation = simulated(1.4, 0, 20_000, new Random(6)).elongation().orElseThrow();
    double half = 1.959964 / Math.sqrt(20_000);
    assertThat(Math.log(elongation.hi95() / elongation.value()))
        .isCloseTo(half, within(0.05 * half));
    assertThat(Math.log(elongation.value() / elongation.lo95()))
        .isCloseTo(half, within(0.05 * half));
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
    assertThatThrownBy(() -> ErrorEllipse.of(new double[] {1, Double.NaN}, new double[2]))
        .hasMessageContaining("east [1] = NaN");
    assertThatThrownBy(() -> ErrorEllipse.of(new double[2], new double[] {Double.NaN, 1}))
        .hasMessageContaining("north [0] = NaN");
  }

  /** Samples whose long axis lies {@code degrees} from north through east. */
  private static double[][] turned(double elongation, double correlation, int n, double degrees) {
    Random random = new Random(12);
    double sine = Math.sin(Math.toRadians(degrees));
    double cosine = Math.cos(Math.toRadians(degrees));
    double[][] points = new double[2][n];
    double along = 0;
    double across = 0;
    for (int i = 0; i < n; i++) {
      along = correlation * along + random.nextGaussian();
      across = correlation * across + random.nextGaussian();
      points[0][i] = 5 + elongation * along * sine + across * cosine;
      points[1][i] = elongation * along * cosine - across * sine;
    }
    return points;
  }

  /** Derivatives of the three figures with respect to the weight of each sample. */
  private static double[][] influence(double[][] points) {
    int n = points[0].length;
    double step = 1e-4;
    double[][] influence = new double[3][n];
    for (int i = 0; i < n; i++) {
      double[] extra = new double[n];
      extra[i] = step;
      double[] more = figures(points, extra);
      extra[i] = -step;
      double[] less = figures(points, extra);
      for (int k = 0; k < 3; k++) {
        influence[k][i] = (more[k] - less[k]) / (2 * step);
      }
    }
    return influence;
  }

  /** Both parts of the ellipticity and ln of the elongation, sample i weighing 1 + extra[i]. */
  private static double[] figures(double[][] points, double[] extra) {
    double[] moments = new double[6];
    for (int i = 0; i < extra.length; i++) {
      double w = 1 + extra[i];
      double x = points[0][i];
      double y = points[1][i];
      double[] parts = {1, x, y, x * x, y * y, x * y};
      for (int k = 0; k < 6; k++) {
        moments[k] += w * parts[k];
      }
    }
    double x = moments[1] / moments[0];
    double y = moments[2] / moments[0];
    double see = moments[3] / moments[0] - x * x;
    double snn = moments[4] / moments[0] - y * y;
    double sen = moments[5] / moments[0] - x * y;
    double e1 = (snn - see) / (snn + see);
    double e2 = 2 * sen / (snn + see);
    double length = Math.hypot(e1, e2);
    return new double[] {e1, e2, Math.log((1 + length) / (1 - length)) / 2};
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
