package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Two pointings give the axis back that their drifts were made with. */
class TwoPointingsTest {
  private static final double RATE = 15.041067 * 60 * Math.PI / (180 * 3600);

  /**
   * Dec drifts in arcsec a minute at two hour angles, by the first-order formula of Chauvenet
   * (1876), worked out by hand for two sites; the exact rotation differs by the second order, half
   * a percent here.
   */
  @Tag("identity")
  @ParameterizedTest(name = "latitude {0}")
  @CsvSource({
    "50, -5, -1.2338995350, -75, -0.9396435308, 420, -150, 1.428148",
    "-33, 10, -0.5937663724, 70, 1.1789040295, -240, 360, 1.732051"
  })
  void twoDriftsGiveBothErrors(
      double latitude,
      double firstDegrees,
      double firstDrift,
      double secondDegrees,
      double secondDrift,
      double azimuthArcsec,
      double altitudeArcsec,
      double condition) {
    Site site = new Site(latitude);
    PolarAxis axis = new PolarAxis(site, azimuthArcsec / 60, altitudeArcsec / 60);
    double s = Math.signum(latitude);
    double first = Math.toRadians(firstDegrees);
    double second = Math.toRadians(secondDegrees);
    Array2DRowRealMatrix system =
        new Array2DRowRealMatrix(
            new double[][] {
              {-s * RATE * Math.cos(first), -s * RATE * Math.sin(first)},
              {-s * RATE * Math.cos(second), -s * RATE * Math.sin(second)}
            });
    assertThat(new SingularValueDecomposition(system).getConditionNumber())
        .isCloseTo(condition, within(1e-6));

    double exactFirst = drift(site, axis, firstDegrees);
    double exactSecond = drift(site, axis, secondDegrees);
    assertThat(exactFirst).isCloseTo(firstDrift, within(0.005 * Math.abs(firstDrift)));
    assertThat(exactSecond).isCloseTo(secondDrift, within(0.005 * Math.abs(secondDrift)));

    RealVector onSky =
        new LUDecomposition(system)
            .getSolver()
            .solve(new ArrayRealVector(new double[] {exactFirst, exactSecond}));
    assertThat(onSky.getEntry(0) / Math.cos(Math.toRadians(latitude)))
        .isCloseTo(azimuthArcsec, within(0.01 * Math.abs(azimuthArcsec)));
    assertThat(onSky.getEntry(1))
        .isCloseTo(altitudeArcsec, within(0.01 * Math.abs(altitudeArcsec)));
  }

  /** Dec drift at the celestial equator [arcsec/min]. */
  private static double drift(Site site, PolarAxis axis, double hourAngleDegrees) {
    TrackedStar star =
        new TrackedStar(site, axis, Optional.empty(), new StarPlace(hourAngleDegrees, 0));
    return star.northArcsec(30) - star.northArcsec(-30);
  }
}
