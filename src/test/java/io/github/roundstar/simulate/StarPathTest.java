package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.formats.FormatException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A tracked star drifts over ten minutes as exact rotation of vectors has it. */
class StarPathTest {
  /**
   * Rotation matrices in NumPy 1.24, [arcsec] after ten minutes; the table takes the arc east at
   * the declination of the start, we where the star is, which the tolerance east holds.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "50, -90, 0, 0, 300, 13.12162, 0.00953, 1e-5",
    "35, -45, 20, -300, 480, 22.28468, -2.62163, 2e-4",
    "52.2, 30, 70, 900, 300, -27.41155, 1.39559, 6e-4",
    "-33, -40, -50, 300, -600, 24.98240, 10.47092, 2e-3",
    "-45, 75, 10, -420, 240, 7.12217, 2.61315, 1e-4"
  })
  void driftIsExact(
      double latitude,
      double hourAngleDegrees,
      double declination,
      double azimuthArcsec,
      double altitudeArcsec,
      double dec,
      double ra,
      double toleranceEast)
      throws FormatException {
    Scenario scenario =
        ScenarioReader.parse(
            "test.toml",
            String.join(
                "\n",
                "night.latitude_deg = " + latitude,
                "polar_axis.azimuth_arcmin = " + azimuthArcsec / 60,
                "polar_axis.altitude_arcmin = " + altitudeArcsec / 60,
                "[[run]]",
                "declination_deg = " + declination,
                "hour_angle_h = " + hourAngleDegrees / 15));

    Offset moved = new StarPath(scenario, scenario.runs().get(0)).at(600);

    assertThat(moved.dec()).isCloseTo(dec, within(1e-5));
    assertThat(moved.ra()).isCloseTo(ra, within(toleranceEast));
  }
}
