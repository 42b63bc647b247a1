package io.github.roundstar.diagnosis;

import static io.github.roundstar.diagnosis.PolarAxisTruthTest.WANDER;
import static io.github.roundstar.diagnosis.PolarAxisTruthTest.because;
import static io.github.roundstar.diagnosis.PolarAxisTruthTest.eastAndWest;
import static io.github.roundstar.diagnosis.PolarAxisTruthTest.run;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.PolarAxisTruthTest.Sky;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.PolarAxis;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guided nights whose latitude nobody told: one direction of the axis, with an interval that holds
 * the truth although refraction is in the drifts and cannot be taken out.
 */
@Tag("identity")
class SitelessAxisTest {
  /** Refraction drifts a star across the meridian there and back. */
  private static String nearMeridian(double latitude) {
    return run(0, 30 * Math.signum(latitude), -0.5, "west");
  }

  @ParameterizedTest(name = "latitude {0}, azimuth {1}, altitude {2}")
  @CsvSource({"47.2, 11, -7", "-33, -6, 4"})
  void knownDirectionHoldsTheTruth(double latitude, double azimuth, double altitude)
      throws Exception {
    Sky sky = new Sky(latitude, azimuth, altitude, WANDER, eastAndWest(latitude));

    NightResult result = sky.result(4, SitelessAxisTest::withoutLatitude);
    PolarAxis axis = result.polarAxis();

    assertThat(axis.basis()).isEqualTo("one-direction");
    assertThat(axis.azimuthArcmin()).isNull();
    assertThat(axis.altitudeArcmin()).isNull();
    assertThat(axis.totalArcmin()).isNull();
    assertThat(axis.trackingRate()).isNull();
    assertThat(axis.fieldRotationDegPerHour()).isNull();
    assertThat(axis.assumed().axisEnd()).isEqualTo("raised");
    assertThat(latitude)
        .isBetween(axis.assumed().latitudeFromDeg(), axis.assumed().latitudeToDeg());
    assertThat(axis.known().arcmin().covers(truth(sky, axis))).isTrue();
    assertThat(because(result, "/polarAxis/totalArcmin")).contains("site_latitude");
  }

  private static double truth(Sky sky, PolarAxis axis) {
    return axis.known().eastShare() * sky.azimuth() * Math.cos(Math.toRadians(sky.latitude()))
        + axis.known().highShare() * sky.altitude();
  }

  /** Near the meridian refraction hardly drifts: the error to the east is told, and sharply. */
  @Test
  void runNearTheMeridianTellsTheErrorToTheEast() throws Exception {
    Sky sky = new Sky(47.2, 11, -7, WANDER, nearMeridian(47.2));

    PolarAxis axis = sky.result(4, SitelessAxisTest::withoutLatitude).polarAxis();

    assertThat(Math.abs(axis.known().eastShare())).isGreaterThan(0.95);
    assertThat(axis.known().arcmin().covers(truth(sky, axis))).isTrue();
    assertThat(axis.known().arcmin().hi95() - axis.known().arcmin().lo95()).isLessThan(2);
  }

  /** An equatorial star may be seen from both hemispheres: the north end is told then. */
  @ParameterizedTest(name = "latitude {0}")
  @CsvSource({"47.2", "-33"})
  void northEndIsToldWhereTheHemisphereIsNotKnown(double latitude) throws Exception {
    Sky sky = new Sky(latitude, 11, -7, WANDER, run(0, 2, -0.5, "west"));

    PolarAxis axis = sky.result(4, SitelessAxisTest::withoutLatitude).polarAxis();

    assertThat(axis.assumed().axisEnd()).isEqualTo("north");
    assertThat(axis.known().arcmin().covers(Math.signum(latitude) * truth(sky, axis))).isTrue();
  }

  /** The same drifts, less of them explained away: never narrower than with the latitude. */
  @Test
  void intervalIsWiderThanWithTheLatitude() throws Exception {
    Sky sky = new Sky(47.2, 11, -7, WANDER, eastAndWest(47.2));

    PolarAxis with = sky.result(4, run -> run).polarAxis();
    PolarAxis without = sky.result(4, SitelessAxisTest::withoutLatitude).polarAxis();

    assertThat(with.assumed()).isNull();
    assertThat(without.known().arcmin().hi95() - without.known().arcmin().lo95())
        .isGreaterThan(with.known().arcmin().hi95() - with.known().arcmin().lo95());
  }

  /** Low in the east refraction may be all of a short run's drift: no number. */
  @Test
  void lowStarTellsNothingWithoutTheLatitude() throws Exception {
    String low = run(0, 5, -4.3, "west").replace("duration_min = 60", "duration_min = 6");
    Sky sky = new Sky(47.2, 1, 1, WANDER, low);

    NightResult result = sky.result(4, SitelessAxisTest::withoutLatitude);

    assertThat(sky.result(4, run -> run).polarAxis().known()).isNotNull();
    assertThat(result.polarAxis()).isNull();
    assertThat(because(result, "/polarAxis"))
        .contains("refraction cannot be taken out")
        .contains("site_latitude");
  }

  /** No assumed latitude reaches the air's figures. */
  @Test
  void airmassStaysUnknown() throws Exception {
    Sky sky = new Sky(47.2, 11, -7, WANDER, nearMeridian(47.2));
    NightResult result = sky.result(4, SitelessAxisTest::withoutLatitude);

    assertThat(sky.result(4, run -> run).seeing().runs()).allMatch(run -> run.airmass() != null);
    assertThat(result.seeing().runs()).isNotEmpty().allMatch(run -> run.airmass() == null);
  }

  /** A hundred nights, half of them in the south. */
  @Tag("long")
  @Test
  void intervalsHoldTheTruth() throws Exception {
    Random random = new Random(11);
    int told = 0;
    int held = 0;
    for (int seed = 1; seed <= 100; seed++) {
      double latitude = (seed % 2 == 0 ? 1 : -1) * (20 + 40 * random.nextDouble());
      Sky sky =
          new Sky(
              latitude,
              30 * (random.nextDouble() - 0.5),
              20 * (random.nextDouble() - 0.5),
              WANDER,
              eastAndWest(latitude));
      PolarAxis axis = sky.result(seed, SitelessAxisTest::withoutLatitude).polarAxis();
      if (axis != null) {
        told++;
        held += axis.known().arcmin().covers(truth(sky, axis)) ? 1 : 0;
      }
    }
    assertThat(told).isGreaterThan(80);
    assertThat((double) held / told).as("%d of %d", held, told).isGreaterThanOrEqualTo(0.95);
  }

  private static GuideRun withoutLatitude(GuideRun run) {
    Pointing pointing = run.pointing();
    return PolarAxisTruthTest.pointed(
        run,
        new Pointing(
            pointing.declinationDegrees(),
            pointing.hourAngleHours(),
            pointing.pierSide(),
            OptionalDouble.empty()));
  }
}
