package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A stretch is the logarithm of a covariance's shape, and turns into an interval and back. */
class StretchTest {
  /** Root of the ratio of the eigenvalues, and the direction of the first eigenvector. */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource({
    "3, 1, 0",
    "1, 3, 0",
    "2, 1, 0.5",
    "2, 1, -0.5",
    "1, 2, 0.9",
    "1, 2, -0.9",
    "0.02, 0.5, 0.09"
  })
  void elongationAndAngleAreThoseOfTheEigenvectors(double first, double second, double shared) {
    EigenDecomposition eigen =
        new EigenDecomposition(
            new Array2DRowRealMatrix(new double[][] {{first, shared}, {shared, second}}));
    double[] axis = eigen.getEigenvector(0).toArray();
    double angle = (Math.toDegrees(Math.atan2(axis[1], axis[0])) + 360) % 180;
    double elongation = Math.sqrt(eigen.getRealEigenvalue(0) / eigen.getRealEigenvalue(1));
    Stretch stretch = Stretch.of(first, second, shared);
    assertThat(stretch.elongation()).isCloseTo(elongation, within(1e-12 * elongation));
    assertThat(stretch.angleDegrees()).isCloseTo(angle, within(1e-10));
    double doubled = 2 * Math.toRadians(angle);
    assertThat(stretch.along())
        .isCloseTo(Math.log(elongation) * Math.cos(doubled), within(1e-12 * elongation));
    assertThat(stretch.aslant())
        .isCloseTo(Math.log(elongation) * Math.sin(doubled), within(1e-12 * elongation));
  }

  @Test
  void aCircleIsNotStretchedAndALineHasAFiniteLength() {
    assertThat(Stretch.of(2, 2, 0)).isEqualTo(new Stretch(0, 0));
    assertThat(Stretch.of(0, 0, 0)).isEqualTo(new Stretch(0, 0));
    assertThat(Stretch.of(2, 2, 0).elongation()).isEqualTo(1);
    Stretch line = Stretch.of(1, 1, 1);
    assertThat(line.elongation()).isBetween(1e6, 1e7);
    assertThat(line.angleDegrees()).isCloseTo(45, within(1e-12));
  }

  @Test
  void anglesStayBelowHalfATurn() {
    assertThat(new Stretch(1, -1e-18).angleDegrees()).isBetween(0.0, 179.9999999999);
    assertThat(new Stretch(1, 0).angleDegrees()).isZero();
    assertThat(new Stretch(-1, 0).angleDegrees()).isEqualTo(90);
  }

  /** By hand: ln 2 give or take 1.959964 times 0.1, a length of 0.5 along 3-4-5. */
  @Test
  @Tag("identity")
  void intervalIsSymmetricInTheLogarithm() {
    Estimate clear = new Stretch(0, Math.log(2)).elongation(0.1);
    assertThat(clear.value()).isCloseTo(2, within(1e-12));
    assertThat(clear.lo95()).isCloseTo(2 * Math.exp(-0.1959964), within(1e-12));
    assertThat(clear.hi95()).isCloseTo(2 * Math.exp(0.1959964), within(1e-12));
    assertThat(new Stretch(0.3, -0.4).elongation(0.01).value())
        .isCloseTo(Math.exp(0.5), within(1e-12));
  }

  /**
   * 95 % of chi-square with two degrees of freedom is 5.991 (the usual tables), its root 2.4477: a
   * length below that many standard errors may be none, although the interval of one part alone
   * would not hold zero.
   */
  @Test
  @Tag("published")
  void whereTheJointRegionHoldsACircleTheIntervalDoesAndThereIsNoAngle() {
    double root = Math.sqrt(5.991);
    Stretch stretch = new Stretch(0.3, 0);
    double small = 0.3 / root * 0.999;
    double large = 0.3 / root * 1.001;
    assertThat(stretch.elongation(large).lo95()).isEqualTo(1);
    assertThat(stretch.elongation(large).hi95())
        .isCloseTo(Math.exp(0.3 + 1.959964 * large), within(1e-12));
    assertThat(stretch.angleDegrees(large)).isEmpty();
    assertThat(stretch.elongation(small).lo95())
        .isCloseTo(Math.exp(0.3 - 1.959964 * small), within(1e-12));
    assertThat(stretch.angleDegrees(small)).hasValue(0);
    assertThat(new Stretch(0, 0).elongation(0).lo95()).isEqualTo(1);
  }
}
