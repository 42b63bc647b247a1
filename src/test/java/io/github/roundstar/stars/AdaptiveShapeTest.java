package io.github.roundstar.stars;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.signal.CovarianceEllipse;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Moments agree with published formulas and with numbers worked out elsewhere. */
class AdaptiveShapeTest {
  /**
   * A, B and THETA of isophotal moments: E. Bertin &amp; S. Arnouts 1996, A&amp;AS 117, 393; values
   * by NumPy eigh.
   */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # x2, y2, xy,   A,           B,           theta
          4,    1,  0,    2,           1,           0
          1,    4,  0,    2,           1,           90
          3,    2,  0.8,  1.855639543, 1.247638524, 28.997308
          2,    3,  -0.8, 1.855639543, 1.247638524, 118.997308
          2,    2,  -0.5, 1.581138830, 1.224744871, 135
          """)
  void ellipseOfMomentsIsThePublishedOne(
      double xx, double yy, double xy, double major, double minor, double theta) {
    // North is x and east is y, so that the position angle runs from +x towards +y.
    CovarianceEllipse ellipse = new CovarianceEllipse(yy, xx, xy);
    assertThat(ellipse.majorSigma()).isCloseTo(major, within(1e-8));
    assertThat(ellipse.minorSigma()).isCloseTo(minor, within(1e-8));
    assertThat(ellipse.positionAngleDegrees().orElseThrow()).isCloseTo(theta, within(1e-5));
    Star star = new Star(1, 1, 1, 30, xx, yy, xy, 0.01);
    assertThat(star.stretch().elongation()).isCloseTo(major / minor, within(1e-8));
    assertThat(star.stretch().angleDegrees()).isCloseTo(theta, within(1e-5));
    assertThat(star.majorFwhmPixels()).isCloseTo(2.3548200450309493 * major, within(1e-7));
  }

  /** 33 x 33 pixels, centre (16.3, 15.8), covariance [[4, 1], [1, 2.5]], height 1000. */
  private static StarField published() {
    return new StarField(33, 33, 1, 1).star(16.3, 15.8, 1000, new double[] {4, 2.5, 1});
  }

  /** Limit of the iteration: Hirata &amp; Seljak 2003, MNRAS 343, 459; exact for a Gaussian. */
  @Tag("identity")
  @Test
  void adaptiveMomentsOfAGaussianAreTheGaussian() {
    Plane plane = Plane.of(33, 33, published().pixels.clone());
    Segment start = new Segment(new int[0], 16, 16, 4, 4, 0, 1000, 0, false);
    AdaptiveShape shape = AdaptiveShape.of(plane, start, 0, 1).orElseThrow();
    assertThat(shape.x()).isCloseTo(16.3, within(1e-3));
    assertThat(shape.y()).isCloseTo(15.8, within(1e-3));
    assertThat(shape.xx()).isCloseTo(4, within(2e-3));
    assertThat(shape.yy()).isCloseTo(2.5, within(2e-3));
    assertThat(shape.xy()).isCloseTo(1, within(2e-3));
    assertThat(shape.amplitude()).isCloseTo(1000, within(1.0));
  }

  /**
   * 43 pixels above 100 without smoothing: values by NumPy, and by sep.extract to its precision.
   */
  @Tag("identity")
  @Test
  void widthsOfTheTestImageAreThePublishedOnes() {
    Star star = new Star(17.3, 16.8, 18849.555921538755, 1e4, 4, 2.5, 1, 1e-4);
    assertThat(star.majorFwhmPixels()).isCloseTo(4.995327667, within(1e-8));
    assertThat(star.minorFwhmPixels()).isCloseTo(3.330218445, within(1e-8));
    assertThat(star.stretch().angleDegrees()).isCloseTo(26.565051, within(1e-6));
  }

  @Test
  void aThinSegmentGetsThePixelsOwnVariance() {
    Segment line = new Segment(new int[0], 1, 1, 9, 0, 0, 1, 0, false);
    assertThat(List.of(line.resolved().xx(), line.resolved().yy()))
        .containsExactly(9 + 1.0 / 12, 1.0 / 12);
    Segment star = new Segment(new int[0], 1, 1, 2, 1, 0, 1, 0, false);
    assertThat(star.resolved()).isSameAs(star);
  }
}
