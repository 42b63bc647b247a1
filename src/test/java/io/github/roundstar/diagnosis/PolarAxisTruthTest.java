package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import io.github.roundstar.sky.SiderealTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guided nights with a polar axis in error, known truth: the axis is recovered through corrections,
 * play, refraction and wander, and nothing is claimed that the runs do not hold.
 */
@Tag("identity")
class PolarAxisTruthTest {
  private static final double WITHIN_ARCMIN = 0.5;
  private static final double WITHIN_SHARE = 0.05;
  private static final int NIGHTS = 20;
  private static final int FEWEST = 16;

  static final String WANDER = "dec_wander_arcsec_per_root_s = 0.01\n";

  /** Site, axis and the runs of a night; the pulses push unlike north and south by a share. */
  record Sky(double latitude, double azimuth, double altitude, String more, String runs) {
    double total() {
      return Math.hypot(azimuth * Math.cos(Math.toRadians(latitude)), altitude);
    }

    NightResult result(int seed, UnaryOperator<GuideRun> change) throws FormatException {
      List<GuideRun> runs =
          Simulation.run(ScenarioReader.parse("truth", scenario(seed))).runs().stream()
              .map(SimulatedRun::log)
              .map(change)
              .toList();
      Equipment unknown = Equipment.UNKNOWN;
      Equipment.Site site =
          new Equipment.Site(
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              OptionalDouble.of(905),
              OptionalDouble.of(4));
      Equipment equipment =
          new Equipment(
              site,
              unknown.mount(),
              aperture(60),
              unknown.imaging(),
              unknown.seeingFwhmArcsec(),
              unknown.limits());
      return NightAnalysis.of(new Night("truth", runs, List.of()), equipment, "test", true)
          .result();
    }

    private String scenario(int seed) {
      return String.format(
          Locale.ROOT,
          """
          [night]
          seed = %d
          start = "2026-10-08T20:10:00+02:00"
          latitude_deg = %.2f
          longitude_deg = 11.6
          cadence_s = 3.0
          guide_exposure_s = 2.0
          [air]
          pressure_hpa = 905
          temperature_c = 4
          [polar_axis]
          azimuth_arcmin = %.3f
          altitude_arcmin = %.3f
          [noise]
          white_arcsec = 0.4
          [star]
          snr = 1000
          [loop.ra]
          gain = 0.6
          deadband_arcsec = 0.1
          [loop.dec]
          gain = 0.6
          deadband_arcsec = 0.1
          [dither]
          every_min = 12
          size_arcsec = 4
          %s
          [mount]
          guide_rate = 0.5
          worm_period_s = 479
          ra_wander_arcsec_per_root_s = 0.02
          dec_backlash_arcsec = 1
          %s
          """,
          seed,
          latitude,
          azimuth,
          altitude,
          runs,
          more);
    }
  }

  static String run(double startMinutes, double declination, double hours, String side) {
    return String.format(
        Locale.ROOT,
        "[[run]]\nstart_min = %.1f\nduration_min = 60\ndeclination_deg = %.1f\n"
            + "hour_angle_h = %.2f\npier_side = \"%s\"\n",
        startMinutes,
        declination,
        hours,
        side);
  }

  static String eastAndWest(double latitude) {
    double north = Math.signum(latitude);
    return run(0, 34 * north, -3.2, "west") + run(66, 48 * north, 1.4, "east");
  }

  /** Two runs of an hour: within 0.5 arcmin and 5 %, and inside the intervals. */
  @ParameterizedTest(name = "latitude {0}, azimuth {1}, altitude {2}")
  @CsvSource({"47.2, 11, -7", "-33, -6, 4"})
  void axisIsRecovered(double latitude, double azimuth, double altitude) throws Exception {
    Sky sky = new Sky(latitude, azimuth, altitude, WANDER, eastAndWest(latitude));
    List<PolarAxis> axes = axes(sky);

    for (PolarAxis axis : axes) {
      assertThat(axis.basis()).isEqualTo("two-pointings");
      assertThat(axis.totalArcmin().value())
          .isBetween(0.95 * sky.total() - 0.5, 1.05 * sky.total() + 0.5);
      assertThat(axis.trackingRate().kingArcsecPerMinuteAxis()).isBetween(-0.5, -0.1);
    }
    assertHeld(axes, PolarAxis::consistent);
    assertHeld(axes, axis -> axis.azimuthArcmin().covers(azimuth));
    assertHeld(axes, axis -> axis.altitudeArcmin().covers(altitude));
    assertHeld(axes, axis -> axis.trackingRate().errorArcsecPerMinuteAxis().covers(0));
  }

  private static List<PolarAxis> axes(Sky sky) throws FormatException {
    List<PolarAxis> axes = new ArrayList<>();
    for (int seed = 1; seed <= NIGHTS; seed++) {
      axes.add(sky.result(seed, run -> run).polarAxis());
    }
    return axes;
  }

  /** Of 95 % fewer hold by a chance of 1 in 400. */
  private static void assertHeld(List<PolarAxis> axes, Predicate<PolarAxis> held) {
    assertThat(axes.stream().filter(held).count()).isGreaterThanOrEqualTo(FEWEST);
  }

  /** A hundred nights, axes up to 17 arcmin off, response unlike by 2 % either way. */
  @Tag("long")
  @ParameterizedTest(name = "latitude {0}")
  @CsvSource({"47.2", "-33"})
  void intervalsCoverTheTruth(double latitude) throws Exception {
    Random random = new Random(7);
    int within = 0;
    int azimuth = 0;
    int altitude = 0;
    int total = 0;
    for (int seed = 1; seed <= 100; seed++) {
      double unlike = 0.02 * (random.nextInt(3) - 1);
      Sky sky =
          new Sky(
              latitude,
              30 * (random.nextDouble() - 0.5),
              20 * (random.nextDouble() - 0.5),
              WANDER + "response_north = " + (1 + unlike) + "\nresponse_south = " + (1 - unlike),
              eastAndWest(latitude));
      PolarAxis axis = sky.result(seed, run -> run).polarAxis();
      double error = Math.abs(axis.totalArcmin().value() - sky.total());
      within += error < WITHIN_ARCMIN + WITHIN_SHARE * sky.total() ? 1 : 0;
      azimuth += covers(axis.azimuthArcmin(), sky.azimuth());
      altitude += covers(axis.altitudeArcmin(), sky.altitude());
      total += covers(axis.totalArcmin(), sky.total());
    }
    assertThat(within).isGreaterThanOrEqualTo(97);
    assertThat(azimuth).isGreaterThanOrEqualTo(88);
    assertThat(altitude).isGreaterThanOrEqualTo(88);
    assertThat(total).isGreaterThanOrEqualTo(88);
  }

  private static int covers(Estimate figure, double truth) {
    return figure.covers(truth) ? 1 : 0;
  }

  /** North and south still mean something six degrees from the pole; the drift is not divided. */
  @ParameterizedTest(name = "latitude {0}")
  @CsvSource({"47.2", "-33"})
  void axisIsRecoveredNearThePole(double latitude) throws Exception {
    double north = Math.signum(latitude);
    String runs = run(0, 80 * north, -3.2, "west") + run(66, 84 * north, 1.4, "east");
    List<PolarAxis> axes = axes(new Sky(latitude, 11, -7, WANDER, runs));

    assertHeld(axes, axis -> axis.azimuthArcmin().covers(11));
    assertHeld(axes, axis -> axis.altitudeArcmin().covers(-7));
    assertHeld(axes, PolarAxis::consistent);
  }

  private static String oneLongRun(double latitude) {
    return run(0, 34 * Math.signum(latitude), -1, "west")
        .replace("duration_min = 60", "duration_min = 240");
  }

  /** Four hours hold more than a parabola; it must count neither as wander nor as response. */
  @ParameterizedTest(name = "latitude {0}")
  @CsvSource({"47.2", "-33"})
  void oneLongRunTellsBothParts(double latitude) throws Exception {
    Sky sky = new Sky(latitude, 16.8, 11.6, WANDER, oneLongRun(latitude));

    PolarAxis axis = sky.result(3, run -> run).polarAxis();

    assertThat(axis.basis()).isEqualTo("curvature");
    assertThat(axis.azimuthArcmin().covers(16.8)).isTrue();
    assertThat(axis.altitudeArcmin().covers(11.6)).isTrue();
    assertThat(axis.totalArcmin().covers(sky.total())).isTrue();
    assertThat(axis.totalArcmin().hi95() - axis.totalArcmin().lo95()).isLessThan(2);
  }

  /** A hundred nights of one run of four hours each. */
  @Tag("long")
  @Test
  void intervalsOfOneLongRunCoverTheTruth() throws Exception {
    Random random = new Random(9);
    int azimuth = 0;
    int altitude = 0;
    int total = 0;
    for (int seed = 1; seed <= 100; seed++) {
      double unlike = 0.02 * (random.nextInt(3) - 1);
      Sky sky =
          new Sky(
              47.2,
              40 * (random.nextDouble() - 0.5),
              30 * (random.nextDouble() - 0.5),
              WANDER + "response_north = " + (1 + unlike) + "\nresponse_south = " + (1 - unlike),
              oneLongRun(47.2));
      PolarAxis axis = sky.result(seed, run -> run).polarAxis();
      azimuth += covers(axis.azimuthArcmin(), sky.azimuth());
      altitude += covers(axis.altitudeArcmin(), sky.altitude());
      total += covers(axis.totalArcmin(), sky.total());
    }
    assertThat(azimuth).isBetween(88, 99);
    assertThat(altitude).isBetween(88, 99);
    assertThat(total).isBetween(88, 99);
  }

  /** A drift that no axis makes is named, and the axis is still found beside it. */
  @Test
  void flexureIsToldFromTheAxis() throws Exception {
    Sky sky = new Sky(47.2, 11, -7, WANDER + "dec_flexure_arcsec_per_min = 1.2", eastAndWest(47.2));

    PolarAxis axis = sky.result(5, run -> run).polarAxis();

    assertThat(axis.consistent()).isFalse();
    assertThat(axis.beside().follows()).isEqualTo("nothing");
    assertThat(axis.beside().arcsecPerMinute().covers(1.2)).isTrue();
    assertThat(axis.azimuthArcmin().covers(11)).isTrue();
  }

  /** A small error in one run bends too little: one direction only, and where to look next. */
  @Test
  void oneRunTellsOneDirection() throws Exception {
    Sky sky = new Sky(47.2, 2, -1, "dec_wander_arcsec_per_root_s = 0.03", run(0, 34, -3, "west"));

    PolarAxis axis = sky.result(6, run -> run).polarAxis();

    assertThat(axis.basis()).isEqualTo("one-direction");
    assertThat(axis.totalArcmin()).isNull();
    assertThat(axis.secondPointingHourAngleHours()).isBetween(2.0, 5.0);
    double truth =
        axis.known().eastShare() * 2 * Math.cos(Math.toRadians(47.2)) - axis.known().highShare();
    assertThat(axis.known().arcmin().covers(truth)).isTrue();
  }

  @Test
  void starBelowTheHorizonIsAWrongSign() throws Exception {
    NightResult result =
        new Sky(47.2, 11, -7, WANDER, run(0, 34, -3, "west"))
            .result(
                1,
                run ->
                    pointed(
                        run,
                        new Pointing(
                            OptionalDouble.of(-60),
                            run.pointing().hourAngleHours(),
                            run.pointing().pierSide(),
                            run.pointing().latitudeDegrees())));

    assertThat(result.polarAxis()).isNull();
    assertThat(because(result)).contains("below the horizon");
  }

  /** The clock of the log an hour off: time and right ascension do not go with the hour angle. */
  @Test
  void hourAngleThatContradictsTheTimeIsRefused() throws Exception {
    double begin =
        SiderealTime.hourAngleHours(Instant.parse("2026-10-08T18:10:00Z"), 11.6, 0) + 3.2;
    double rightAscension = begin - 24 * Math.floor(begin / 24);
    UnaryOperator<GuideRun> told =
        run ->
            pointed(
                run,
                new Pointing(
                    run.pointing().declinationDegrees(),
                    run.pointing().hourAngleHours(),
                    run.pointing().pierSide(),
                    run.pointing().latitudeDegrees(),
                    OptionalDouble.of(rightAscension),
                    OptionalDouble.of(11.6)));
    Sky sky = new Sky(47.2, 11, -7, WANDER, run(0, 34, -3.2, "west"));

    NightResult right = sky.result(1, told);
    NightResult wrong = sky.result(1, run -> late(told.apply(run)));

    assertThat(right.polarAxis()).isNotNull();
    assertThat(wrong.polarAxis()).isNull();
    assertThat(because(wrong)).contains("clock seems to be 1.0 h off");
    assertThat(wrong.runs().get(0).hourAngleHours()).isNull();
    assertThat(wrong.seeing().runs()).allMatch(run -> run.airmass() == null);
  }

  private static GuideRun late(GuideRun run) {
    return new GuideRun(
        run.id(),
        run.start().map(start -> start.plusSeconds(3600)),
        run.pointing(),
        run.camera(),
        run.loop(),
        run.frames(),
        run.counts(),
        run.notes(),
        run.sense());
  }

  /** Nothing throws, and the reason tells what to do. */
  @ParameterizedTest(name = "declination {0}, hour angle {1}, latitude {2}: {3}")
  @CsvSource({
    ", -3, 47.2, add declination and hour_angle",
    "34, , 47.2, add declination and hour_angle",
    "90, -3, 47.2, within a degree of the pole",
    "-89.5, -3, -47.2, within a degree of the pole",
    "34, -3, 90, near to a pole of the Earth",
    "34, -3, -86, near to a pole of the Earth",
    "-20, -3, 47.2, stands below 15 degrees",
    "34, 12, 47.2, check their signs"
  })
  void oddPointingHasAReason(Double declination, Double hours, double latitude, String reason)
      throws Exception {
    Sky sky = new Sky(47.2, 11, -7, WANDER, run(0, 34, -3, "west").replace("60", "10"));
    NightResult result =
        sky.result(
            1,
            run ->
                pointed(
                    run,
                    new Pointing(
                        declination == null
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(declination),
                        hours == null ? OptionalDouble.empty() : OptionalDouble.of(hours),
                        run.pointing().pierSide(),
                        OptionalDouble.of(latitude))));

    assertThat(result.polarAxis()).isNull();
    assertThat(because(result)).contains(reason);
  }

  @Test
  void hourAngleThatStandsStillIsRefused() throws Exception {
    NightResult result =
        new Sky(47.2, 11, -7, WANDER, eastAndWest(47.2))
            .result(
                1,
                run ->
                    pointed(
                        run,
                        new Pointing(
                            OptionalDouble.of(34),
                            OptionalDouble.of(-1),
                            run.pointing().pierSide(),
                            run.pointing().latitudeDegrees())));

    assertThat(result.polarAxis()).isNull();
    assertThat(because(result)).contains("the same hour angle at different times");
  }

  static GuideRun pointed(GuideRun run, Pointing pointing) {
    return new GuideRun(
        run.id(),
        run.start(),
        pointing,
        run.camera(),
        run.loop(),
        run.frames(),
        run.counts(),
        run.notes(),
        run.sense());
  }

  private static Equipment.GuideOptics aperture(double millimetres) {
    Equipment.GuideOptics guide = Equipment.UNKNOWN.guide();
    return new Equipment.GuideOptics(
        guide.focalLengthMillimetres(),
        guide.pixelMicrometres(),
        guide.binning(),
        OptionalDouble.of(millimetres),
        guide.mirrored(),
        guide.starXArcmin(),
        guide.starYArcmin(),
        guide.arrangement());
  }

  private static String because(NightResult result) {
    return because(result, "/polarAxis");
  }

  static String because(NightResult result, String figure) {
    return result.notComputed().stream()
        .filter(entry -> entry.figure().equals(figure))
        .map(NotComputed::because)
        .findFirst()
        .orElseThrow();
  }
}
