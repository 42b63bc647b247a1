package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A misplaced polar axis moves stars as spherical geometry says, in both hemispheres. */
class PolarAxisTest {
  private static final double DEGREES_PER_SECOND = 15.041067 / 3600;

  /**
   * Rotation matrices (Rodrigues) in NumPy 1.24, star about the pole and mount about its axis by
   * the same angle; declination rates confirmed with 30-digit mpmath. Rates [arcsec/min] are
   * central differences over one second; changes [arcsec] run over 10 min and take the
   * right-ascension arc at the declination of the start.
   */
  @Tag("published")
  @ParameterizedTest(name = "{index}: latitude {0}, hour angle {1}")
  @CsvSource(
      textBlock =
          """
          # latitude, H, dec, azimuth, altitude ["], dec rate, ra rate, rotation rate, 10 min dec, 10 min ra, 10 min rotation
          50,   0,   0,   600, 0,    -1.687419, 0.001578,  0.001880,  -16.86922, 0.01576,   -0.3503
          50,   -90, 0,   0,   300,  1.312580,  0.000955,  0.000000,  13.12162,  0.00953,   0.2871
          50,   90,  0,   0,   300,  -1.312580, 0.000955,  0.000000,  -13.12162, 0.00953,   -0.2871
          50,   0,   60,  600, 0,    -1.687416, 0.003893,  -0.007170, -16.86799, 0.35850,   -0.8097
          35,   -45, 20,  -300, 480, 2.245031,  -0.245360, 0.770961,  22.28468,  -2.62163,  8.2302
          35,   60,  -10, 240, -180, 0.251500,  -0.198458, -1.156825, 2.76339,   -1.97425,  -11.5087
          52.2, 30,  70,  900, 300,  -2.743933, 0.083243,  -0.254510, -27.41155, 1.39559,   -4.2971
          -33,  0,   0,   600, 0,    2.201643,  0.002686,  -0.001744, 22.00978,  0.02682,   0.4641
          -33,  -90, 0,   0,   300,  -1.312580, 0.000955,  0.000000,  -13.12162, 0.00953,   -0.2871
          -33,  -40, -50, 300, -600, 2.527650,  1.005315,  2.034745,  24.98240,  10.47092,  21.1965
          -45,  75,  10,  -420, 240, 0.679071,  0.263927,  -1.548837, 7.12217,   2.61315,   -15.3327
          10,   -20, 15,  1200, 600, -3.962472, -1.096553, 4.386962,  -40.53887, -10.72928, 42.9549
          """)
  void starDriftsAsExactRotationSays(
      double latitude,
      double hourAngle,
      double declination,
      double azimuthArcsec,
      double altitudeArcsec,
      double decRate,
      double raRate,
      double rotationRate,
      double decChange,
      double raChange,
      double rotationChange) {
    PolarAxis axis = new PolarAxis(new Site(latitude), azimuthArcsec / 60, altitudeArcsec / 60);
    StarPlace start = new StarPlace(hourAngle, declination);

    Drift second = Drift.between(axis, start, -0.5, 0.5);
    assertThat(second.north * 60).isCloseTo(decRate, within(1e-6));
    assertThat(second.east * 60).isCloseTo(raRate, within(1e-6));
    assertThat(second.turned * 60).isCloseTo(rotationRate, within(1e-6));

    Drift tenMinutes = Drift.between(axis, start, 0, 600);
    assertThat(tenMinutes.north).isCloseTo(decChange, within(1e-5));
    assertThat(tenMinutes.east).isCloseTo(raChange, within(1e-5));
    assertThat(tenMinutes.turned).isCloseTo(rotationChange, within(1e-4));
  }

  /** The same source: north end of the axis as (east, north, up). */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "50, 600, 0, 0.0018697907264378, 0.6427848901842468, 0.7660444431189780",
    "35, -300, 480, -0.0011894633617393, 0.8178141894890676, 0.5754811349186439",
    "-33, 300, -600, -0.0012220955584883, 0.8402504194678394, -0.5421971404079571"
  })
  void axisPointsWhereTheAdjustersPutIt(
      double latitude, double azimuthArcsec, double altitudeArcsec, double e, double n, double up) {
    PolarAxis axis = new PolarAxis(new Site(latitude), azimuthArcsec / 60, altitudeArcsec / 60);

    assertThat(axis.northEnd().distance(new Vector3D(e, n, up))).isLessThan(1e-15);
  }

  @Test
  @Tag("identity")
  void axisOnThePoleReadsTheSkysCoordinates() {
    PolarAxis axis = new PolarAxis(new Site(-30), 0, 0);

    StarPlace seen = axis.fromMount(new StarPlace(-100, -70));

    assertThat(seen.hourAngleDegrees()).isCloseTo(-100, within(1e-12));
    assertThat(seen.declinationDegrees()).isCloseTo(-70, within(1e-12));
  }

  private record Drift(double east, double north, double turned) {
    static Drift between(PolarAxis axis, StarPlace start, double from, double to) {
      StarPlace before = after(start, from);
      StarPlace later = after(start, to);
      StarPlace read = axis.fromMount(before);
      StarPlace readLater = axis.fromMount(later);
      double hourAngleGain =
          readLater.hourAngleDegrees() - read.hourAngleDegrees() - (to - from) * DEGREES_PER_SECOND;
      return new Drift(
          -hourAngleGain * Math.cos(Math.toRadians(read.declinationDegrees())) * 3600,
          (readLater.declinationDegrees() - read.declinationDegrees()) * 3600,
          (axis.northPositionAngleDegrees(later) - axis.northPositionAngleDegrees(before)) * 3600);
    }

    private static StarPlace after(StarPlace start, double seconds) {
      return new StarPlace(
          start.hourAngleDegrees() + seconds * DEGREES_PER_SECOND, start.declinationDegrees());
    }
  }
}
