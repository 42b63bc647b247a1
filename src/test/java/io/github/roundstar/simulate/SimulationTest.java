package io.github.roundstar.simulate;

import static io.github.roundstar.simulate.FrameTruth.Column.CORRECTION_DEC;
import static io.github.roundstar.simulate.FrameTruth.Column.CORRECTION_RA;
import static io.github.roundstar.simulate.FrameTruth.Column.ERROR_RA;
import static io.github.roundstar.simulate.FrameTruth.Column.MOTION_DEC;
import static io.github.roundstar.simulate.FrameTruth.Column.MOTION_RA;
import static io.github.roundstar.simulate.FrameTruth.Column.SET_POINT_DEC;
import static io.github.roundstar.simulate.FrameTruth.Column.SET_POINT_RA;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.PierSide;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A simulated night is what its scenario says, and its log and its truth agree. */
@Tag("identity")
class SimulationTest {
  private static final double RATE = 15.0410671787;
  private static final String BUSY =
      """
      [night]
      seed = 4
      cadence_s = 2.5
      guide_exposure_s = 2.0
      [mount]
      dec_backlash_arcsec = 2.0
      ra_wander_arcsec_per_root_s = 0.01
      dec_wander_arcsec_per_root_s = 0.01
      [[mount.harmonic]]
      amplitude_arcsec = 6
      [noise]
      white_arcsec = 0.2
      [seeing]
      [gusts]
      [clouds]
      [dither]
      [[run]]
      duration_min = 40
      """;

  @Test
  void sameSeedGivesTheSameNightAndAnotherSeedAnother() throws FormatException {
    Scenario scenario = ScenarioReader.parse("busy", BUSY);
    Frames first = Simulation.run(scenario).runs().get(0).log().frames();
    Frames again = Simulation.run(scenario).runs().get(0).log().frames();
    Frames other = Simulation.run(scenario.withSeed(5)).runs().get(0).log().frames();

    int same = 0;
    for (int i = 0; i < first.size(); i++) {
      assertThat(first.raArcsec(i)).isEqualTo(again.raArcsec(i));
      assertThat(first.decPulseMillis(i)).isEqualTo(again.decPulseMillis(i));
      same += first.raArcsec(i) == other.raArcsec(i) ? 1 : 0;
    }
    assertThat(same).isZero();
  }

  @Test
  void changeOfOneSourceLeavesTheOthersAsTheyWere() throws FormatException {
    SimulatedRun one = first(BUSY);
    SimulatedRun other =
        first(
            BUSY.replace("ra_wander_arcsec_per_root_s = 0.01", "ra_wander_arcsec_per_root_s = 0.03")
                .replace("[gusts]\n", ""));

    for (int i = 0; i < one.frames().size(); i++) {
      assertThat(other.frames().at(ERROR_RA, i)).isEqualTo(one.frames().at(ERROR_RA, i));
      assertThat(other.frames().at(FrameTruth.Column.WANDER_RA, i))
          .isCloseTo(3 * one.frames().at(FrameTruth.Column.WANDER_RA, i), within(1e-9));
      assertThat(other.frames().at(FrameTruth.Column.WANDER_DEC, i))
          .isEqualTo(one.frames().at(FrameTruth.Column.WANDER_DEC, i));
    }
  }

  /** Corrections built from the logged pulses alone, split by time over the exposures. */
  @ParameterizedTest
  @CsvSource({"east, 2.0", "west, 2.0", "west, 0.7"})
  void offsetsPulsesAndShiftsRebuildTheMotion(String side, double exposure) throws FormatException {
    SimulatedRun run =
        first(
            """
            [night]
            cadence_s = 2.5
            guide_exposure_s = %EXPOSURE
            [polar_axis]
            azimuth_arcmin = 15
            altitude_arcmin = 20
            [mount]
            guide_rate = 0.4
            response_east = 0.9
            response_west = 1.1
            response_north = 0.8
            response_south = 1.05
            [[mount.harmonic]]
            amplitude_arcsec = 9
            [loop]
            pulse_limit_ms = 2400
            [dither]
            every_min = 4
            [[run]]
            duration_min = 30
            declination_deg = 25
            pier_side = "%SIDE"
            """
                .replace("%EXPOSURE", Double.toString(exposure))
                .replace("%SIDE", side));
    boolean east = side.equals("east");
    double axis = 0.4 * RATE;
    double cosine = Math.cos(Math.toRadians(25));
    Frames log = run.log().frames();
    double ra = 0;
    double dec = 0;
    for (int i = 0; i < log.size(); i++) {
      double raMillis = i == 0 ? 0 : log.raPulseMillis(i - 1);
      double decMillis = i == 0 ? 0 : log.decPulseMillis(i - 1);
      double raMove = raMillis / 1000 * axis * cosine * (raMillis > 0 ? 0.9 : 1.1);
      double decMove = decMillis / 1000 * axis * (decMillis > 0 == !east ? 0.8 : 1.05);
      double raNow = ra + raMove * done(raMillis, 2.5, exposure);
      double decNow = dec + decMove * done(decMillis, 2.5, exposure);
      ra += raMove;
      dec += decMove;
      assertThat(raNow).isCloseTo(run.frames().at(CORRECTION_RA, i), within(1e-9));
      assertThat(log.raArcsec(i) + raNow + run.frames().at(SET_POINT_RA, i))
          .isCloseTo(run.frames().at(MOTION_RA, i), within(1e-6));
      assertThat(log.decArcsec(i) + decNow + run.frames().at(SET_POINT_DEC, i))
          .isCloseTo(run.frames().at(MOTION_DEC, i), within(1e-6));
    }
    assertThat(run.truth().dithers()).isEqualTo(7);
  }

  /** Share of a pulse that the mean over the next exposure holds. */
  private static double done(double millis, double cadence, double exposure) {
    double length = Math.abs(millis) / 1000;
    double gap = cadence - exposure;
    if (length <= gap) {
      return 1;
    }
    double whileMoving = (length * length - gap * gap) / (2 * length);
    return (whileMoving + cadence - length) / exposure;
  }

  @Test
  void pulseMakesTheNextOffsetFallAndNotItsOwn() throws FormatException {
    SimulatedRun run =
        first(
            """
            [mount]
            guide_rate = 1.0
            [loop.ra]
            gain = 0.5
            [loop.dec]
            gain = 0.5
            [[knock]]
            at_min = 1.0
            ra_arcsec = 4.0
            dec_arcsec = -4.0
            [[run]]
            duration_min = 3
            declination_deg = 0
            """);
    Frames log = run.log().frames();

    // Frames every 3 s from 0 s: frame 21 is the first one wholly after the knock at 60 s.
    assertThat(log.raArcsec(19)).isCloseTo(0, within(1e-2));
    assertThat(log.raArcsec(20)).isCloseTo(2, within(1e-2));
    assertThat(log.raPulseMillis(20)).isEqualTo(Math.rint(1000 * 0.5 * log.raArcsec(20) / RATE));
    assertThat(log.decPulseMillis(20)).isNegative();
    assertThat(log.raArcsec(21)).isCloseTo(4 - log.raPulseMillis(20) / 1000 * RATE, within(1e-2));
    assertThat(run.frames().at(CORRECTION_RA, 20)).isZero();
    assertThat(log.decArcsec(21))
        .isCloseTo(-4 - log.decPulseMillis(20) / 1000 * RATE, within(1e-2));
  }

  /** Tracking with a tilted axis, first-order spherical trigonometry (Chauvenet 1876). */
  @ParameterizedTest
  @CsvSource({"50, -3, 30, 4, 3", "50, 2, 60, -4, 2", "-33, -2, -40, 3, -4", "-33, 3, 10, -2, 4"})
  void unguidedStarDriftsAsTheAxisSays(
      double latitude, double hourAngle, double declination, double azimuth, double altitude)
      throws FormatException {
    SimulatedRun run =
        first(
            String.join(
                "\n",
                "night.latitude_deg = " + latitude,
                "polar_axis.azimuth_arcmin = " + azimuth,
                "polar_axis.altitude_arcmin = " + altitude,
                "[[run]]",
                "guided = false",
                "duration_min = 20",
                "declination_deg = " + declination,
                "hour_angle_h = " + hourAngle));
    Frames log = run.log().frames();
    int last = log.size() - 1;
    double sense = latitude < 0 ? -1 : 1;
    double u = azimuth * 60 * Math.cos(Math.toRadians(latitude));
    double v = altitude * 60;
    double before = Math.toRadians(hourAngle * 15);
    double after = before + Math.toRadians(log.timeSeconds(last) * RATE / 3600);
    double dec =
        -sense
            * (u * (Math.sin(after) - Math.sin(before)) - v * (Math.cos(after) - Math.cos(before)));
    double ra =
        -sense
            * Math.sin(Math.toRadians(declination))
            * (v * (Math.sin(after) - Math.sin(before)) + u * (Math.cos(after) - Math.cos(before)));

    // Second-order terms: the error of the axis in radians, times its drift, a few times.
    assertThat(log.decArcsec(last)).isCloseTo(dec, within(0.08));
    assertThat(log.raArcsec(last)).isCloseTo(ra, within(0.08));
    assertThat(run.truth().dec().driftArcsecPerMinute())
        .isCloseTo(log.decArcsec(last) / 20, within(0.05 * Math.abs(dec / 20) + 0.01));
    assertThat(log.raPulseMillis(5)).isZero();
  }

  @Test
  void wormShrinksWithDeclinationAndExposure() throws FormatException {
    double exposure = 60;
    SimulatedRun run =
        first(
            """
            night.cadence_s = 60
            night.guide_exposure_s = 60
            [mount]
            worm_period_s = 480
            [[mount.harmonic]]
            amplitude_arcsec = 6
            [[run]]
            guided = false
            duration_min = 32
            declination_deg = 60
            worm_phase_rad = 0.3
            """);
    Frames log = run.log().frames();
    double sine = 0;
    double cosine = 0;
    for (int i = 0; i < log.size(); i++) {
      double phase = 2 * Math.PI * log.timeSeconds(i) / 480;
      sine += 2 * log.raArcsec(i) * Math.sin(phase) / log.size();
      cosine += 2 * log.raArcsec(i) * Math.cos(phase) / log.size();
    }
    double x = Math.PI * exposure / 480;

    assertThat(Math.hypot(sine, cosine)).isCloseTo(6 * 0.5 * Math.sin(x) / x, within(1e-9));
    assertThat(Math.atan2(cosine, sine)).isCloseTo(0.3, within(1e-9));
  }

  @Test
  void noiseComesAboutAsAsked() throws FormatException {
    SimulatedRun run =
        first("noise.white_arcsec = 0.45\n[[run]]\nduration_min = 300\nguided = false\n");
    int n = run.frames().size();
    double squares = 0;
    for (int i = 0; i < n; i++) {
      squares += Math.pow(run.log().frames().raArcsec(i) - run.frames().at(MOTION_RA, i), 2);
    }

    assertThat(run.truth().dec().noiseArcsec())
        .isCloseTo(0.45, within(4 * 0.45 / Math.sqrt(2.0 * n)));
    assertThat(run.truth().ra().noiseArcsec()).isCloseTo(Math.sqrt(squares / n), within(1e-3));
  }

  /**
   * White noise R through an integrating loop of gain g: variance 2 R / (2 - g), lag-1 correlation
   * -g / 2; with one frame of delay the true offset has R g (1 + g) / ((1 - g) (2 + g)). Algebra,
   * confirmed by Monte Carlo in NumPy.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0, 1.3333333333, -0.25", "0.7, 0, 1.5384615385, -0.35", "0.5, 1, 1.6, NaN"})
  void loopAmplifiesNoiseAsTheoryHasIt(double gain, int delay, double factor, double lag)
      throws FormatException {
    SimulatedRun run =
        first(
            String.join(
                "\n",
                "noise.white_arcsec = 1.0",
                "mount.guide_rate = 0.9",
                "[loop.ra]",
                "gain = " + gain,
                "delay_frames = " + delay,
                "[[run]]",
                "duration_min = 1000",
                "declination_deg = 0"));
    Frames log = run.log().frames();
    double squares = 0;
    double products = 0;
    for (int i = 1; i < log.size(); i++) {
      squares += log.raArcsec(i) * log.raArcsec(i);
      products += log.raArcsec(i) * log.raArcsec(i - 1);
    }

    assertThat(squares / log.size()).isCloseTo(factor, within(0.05 * factor));
    if (!Double.isNaN(lag)) {
      assertThat(products / squares).isCloseTo(lag, within(0.03));
    }
  }

  /** Motor moves of one sign keep the tube on one flank; sky signs turn with the pier side. */
  @ParameterizedTest
  @CsvSource({"west", "east"})
  void playHoldsBackTheFirstReversal(String side) throws FormatException {
    SimulatedRun run =
        first(
            """
            mount.dec_backlash_arcsec = 3.0
            [[knock]]
            at_min = 2
            dec_arcsec = 10
            [[knock]]
            at_min = 10
            dec_arcsec = -10
            [[run]]
            duration_min = 20
            pier_side = "%SIDE"
            """
                .replace("%SIDE", side));
    Frames log = run.log().frames();
    double sent = 0;
    for (int i = 200; i < log.size(); i++) {
      sent += log.decPulseMillis(i) / 1000 * 0.5 * RATE;
    }
    double moved =
        run.frames().at(CORRECTION_DEC, log.size() - 1) - run.frames().at(CORRECTION_DEC, 200);

    assertThat(run.log().pointing().pierSide())
        .contains(side.equals("west") ? PierSide.WEST : PierSide.EAST);
    assertThat(sent - moved).isCloseTo(-3, within(1e-6));
    assertThat(run.frames().at(FrameTruth.Column.DEC_LAG, log.size() - 1))
        .isCloseTo(side.equals("west") ? -1.5 : 1.5, within(1e-9));
  }

  @Test
  void starBehindThickCloudIsLostAndNotGuided() throws FormatException {
    SimulatedRun run =
        first(
            """
            noise.white_arcsec = 0.5
            [[cloud]]
            at_min = 2
            minutes = 4
            depth = 1.0
            [[run]]
            duration_min = 8
            """);
    Frames log = run.log().frames();

    assertThat(log.state(80)).isEqualTo(FrameState.LOST);
    assertThat(log.measured(80)).isFalse();
    assertThat(log.raPulseMillis(80)).isZero();
    assertThat(log.snr(80)).isLessThan(1);
    assertThat(run.log().counts().lost()).isBetween(5, 40);
    assertThat(run.log().counts().rows()).isEqualTo(160);
    assertThat(run.truth().events()).hasSize(1);
  }

  @Test
  void tiltedCameraSeesPulsesEastMoveTheStarSouth() throws FormatException {
    SimulatedRun run =
        first(
            """
            mount.camera_angle_deg = 10
            loop.dec_direction = "off"
            [[knock]]
            at_min = 1
            ra_arcsec = 8
            [[run]]
            duration_min = 4
            """);
    Frames log = run.log().frames();
    int before = 20;
    int after = log.size() - 1;

    // Position angle of the camera's north is 10 degrees: what moves west moves south in it.
    assertThat(log.decArcsec(after) - log.decArcsec(before)).isNegative();
    double moved = run.frames().at(MOTION_RA, after) - run.frames().at(CORRECTION_RA, after);
    assertThat(log.decArcsec(after)).isCloseTo(moved * Math.sin(Math.toRadians(10)), within(1e-9));
    assertThat(log.raArcsec(after)).isCloseTo(moved * Math.cos(Math.toRadians(10)), within(1e-9));
  }

  @Test
  void steadyDriftsAddUp() throws FormatException {
    SimulatedRun run =
        first(
            """
            [mount]
            rate_error_arcsec_per_min = 0.6
            ra_flexure_arcsec_per_min = 0.1
            dec_flexure_arcsec_per_min = -0.3
            [[run]]
            declination_deg = 60
            guided = false
            """);

    assertThat(run.truth().ra().driftArcsecPerMinute()).isCloseTo(0.3 + 0.1, within(1e-9));
    assertThat(run.truth().dec().driftArcsecPerMinute()).isCloseTo(-0.3, within(1e-9));
    assertThat(run.truth().ra().driftWithWanderArcsecPerMinute())
        .isEqualTo(run.truth().ra().driftArcsecPerMinute());
  }

  private static SimulatedRun first(String toml) throws FormatException {
    return Simulation.run(ScenarioReader.parse("test.toml", toml)).runs().get(0);
  }
}
