package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Axes and angle of a covariance are those of its eigenvectors. */
class CovarianceEllipseTest {
  /**
   * NumPy 1.24.2 eigh: a Gaussian of the given FWHM, plus a scatter, plus a uniform drift of length
   * L toward a position angle (variance L&sup2; / 12).
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # FWHM, Cxx, Cyy, Cxy, L, PA of L, a, b, a/b, PA [deg]
          2.0, 0.36, 0.16,  0,    0,   0,   1.039878609, 0.938801108, 1.107666576, 90.000000
          2.0, 0.36, 0.16,  0.10, 0,   0,   1.059607888, 0.916474857, 1.156177804, 67.500000
          2.0, 0.36, 0.16, -0.10, 0,   0,   1.059607888, 0.916474857, 1.156177804, 112.500000
          2.0, 0.25, 0.25,  0,    3.0, 0,   1.312001342, 0.985569643, 1.331211195, 0.000000
          2.0, 0.36, 0.16,  0.05, 2.0, 30,  1.158906866, 0.976198366, 1.187163291, 47.450887
          3.0, 0.49, 0.25, -0.12, 4.0, 120, 1.868541906, 1.352016390, 1.382040869, 118.486459
          1.8, 1.00, 0.09,  0,    0,   0,   1.258686415, 0.821152539, 1.532828989, 90.000000
          """)
  void axesAgreeWithEigenvectors(
      double fwhm,
      double cxx,
      double cyy,
      double cxy,
      double length,
      double toward,
      double major,
      double minor,
      double elongation,
      double angle) {
    double seeing = Math.pow(fwhm / (2 * Math.sqrt(2 * Math.log(2))), 2);
    double drift = length * length / 12;
    double sine = Math.sin(Math.toRadians(toward));
    double cosine = Math.cos(Math.toRadians(toward));
    CovarianceEllipse ellipse =
        new CovarianceEllipse(
            seeing + cxx + drift * sine * sine,
            seeing + cyy + drift * cosine * cosine,
            cxy + drift * sine * cosine);
    assertThat(ellipse.majorSigma()).isCloseTo(major, within(6e-10));
    assertThat(ellipse.minorSigma()).isCloseTo(minor, within(6e-10));
    assertThat(ellipse.elongation().orElseThrow()).isCloseTo(elongation, within(6e-10));
    assertThat(ellipse.positionAngleDegrees().orElseThrow()).isCloseTo(angle, within(6e-7));
  }

  @Test
  void aCircleHasNoAngleAndALineNoElongation() {
    CovarianceEllipse circle = new CovarianceEllipse(2, 2, 0);
    assertThat(circle.elongation()).hasValue(1);
    assertThat(circle.positionAngleDegrees()).isEmpty();
    CovarianceEllipse line = new CovarianceEllipse(1, 1, 1);
    assertThat(line.elongation()).isEmpty();
    assertThat(line.minorSigma()).isZero();
    assertThat(line.positionAngleDegrees().orElseThrow()).isCloseTo(45, within(1e-12));
    CovarianceEllipse point = new CovarianceEllipse(0, 0, 0);
    assertThat(point.elongation()).isEmpty();
    assertThat(point.majorSigma()).isZero();
  }

  @Test
  void anglesStayBelowHalfATurn() {
    assertThat(new CovarianceEllipse(0.1, 2, -1e-18).positionAngleDegrees().orElseThrow())
        .isBetween(0.0, 179.9999999999);
    assertThat(new CovarianceEllipse(2, 0.1, -0.0).positionAngleDegrees().orElseThrow())
        .isCloseTo(90, within(1e-12));
  }

  @Test
  void whatIsNoCovarianceIsRefused() {
    assertThatThrownBy(() -> new CovarianceEllipse(1, 1, 1.1)).hasMessageContaining("1.1");
    assertThatThrownBy(() -> new CovarianceEllipse(-1, 1, 0)).hasMessageContaining("-1.0");
    assertThatThrownBy(() -> new CovarianceEllipse(Double.NaN, 1, 0)).hasMessageContaining("NaN");
  }
}
