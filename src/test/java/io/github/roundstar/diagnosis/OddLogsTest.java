package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.RunTruth;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Logs that lack what a figure needs: that figure is null and says why, and the others still hold
 * the simulated truth in their intervals.
 */
@Tag("identity")
class OddLogsTest {
  private static final String PLAIN = KnownTruthTest.scenario(1, 0.6, 0.4, 0) + KnownTruthTest.WORM;
  private static final double WORM_ARCSEC = 6;
  private static final double RATE = 0.5 * 15.041067;

  private static SimulatedRun run(String scenario) throws Exception {
    return Simulation.run(ScenarioReader.parse("odd", scenario)).runs().get(0);
  }

  private static NightResult analysed(GuideRun run) {
    return NightAnalysis.of(
            new Night("odd", List.of(run), List.of()), Equipment.UNKNOWN, "test", true)
        .result();
  }

  private static GuideRun with(GuideRun run, Frames frames) {
    return new GuideRun(
        run.id(),
        run.start(),
        run.pointing(),
        run.camera(),
        run.loop(),
        frames,
        run.counts(),
        run.notes());
  }

  private static String because(NightResult result, String figure) {
    return result.notComputed().stream()
        .filter(reason -> reason.figure().equals("/runs/*" + figure))
        .map(NotComputed::because)
        .findFirst()
        .orElse("");
  }

  private static void assertMountKnown(RunResult run, RunTruth truth) {
    assertThat(run.driftArcsecPerMinuteSky().ra().covers(truth.ra().driftArcsecPerMinute()))
        .isTrue();
    assertThat(run.driftArcsecPerMinuteSky().dec().covers(truth.dec().driftArcsecPerMinute()))
        .isTrue();
    assertThat(run.noiseFloorArcsec().ra().covers(truth.ra().noiseArcsec())).isTrue();
    assertThat(run.noiseFloorArcsec().dec().covers(truth.dec().noiseArcsec())).isTrue();
    assertThat(run.periodic().components().get(0).amplitudeArcsecAxis().covers(WORM_ARCSEC))
        .isTrue();
  }

  /** Pulses that all go one way cross no play, whichever flank the gears rest on. */
  @ParameterizedTest
  @ValueSource(strings = {"north", "south"})
  void oneWayGuidingTellsNoPlay(String way) throws Exception {
    SimulatedRun night =
        run(
            PLAIN
                .replace("[loop.ra]", "dec_direction = \"" + way + "\"\n[loop.ra]")
                .replace("[mount]", "[mount]\ndec_backlash_arcsec = 3"));
    NightResult result = analysed(night.log());

    RunResult run = result.runs().get(0);
    assertThat(run.backlashArcsecAxis().dec()).isNull();
    assertMountKnown(run, night.truth());
    if (way.equals("south")) {
      assertThat(because(result, "/backlashArcsecAxis/dec")).contains("one way only");
      assertThat(run.responseArcsecPerSecond().dec().south().covers(RATE)).isTrue();
      assertThat(because(result, "/responseArcsecPerSecond/dec/north"))
          .contains("no pulse was sent this way");
    } else {
      // The star drifts south and is pulled back only after dithers.
      assertThat(because(result, "/backlashArcsecAxis/dec")).contains("one way only");
    }
  }

  @Test
  void cutOffPulsesLeaveTheMountKnown() throws Exception {
    SimulatedRun night = run(PLAIN.replace("pulse_limit_ms = 1000", "pulse_limit_ms = 30"));
    NightResult result = analysed(night.log());

    RunResult run = result.runs().get(0);
    assertMountKnown(run, night.truth());
    assertThat(run.responseArcsecPerSecond().dec().axis().covers(RATE)).isTrue();
    assertThat(run.backlashArcsecAxis().dec().covers(0)).isTrue();
  }

  @Test
  void threeMinutesTellNoWormAndLittleOfPulses() throws Exception {
    SimulatedRun simulated = run(PLAIN);
    GuideRun night = simulated.log();
    NightResult result = analysed(with(night, night.frames().slice(0, 60)));

    RunResult run = result.runs().get(0);
    assertThat(run.driftArcsecPerMinuteSky().ra()).isNull();
    assertThat(because(result, "/driftArcsecPerMinuteSky/ra")).contains("turn of the worm");
    assertThat(run.driftArcsecPerMinuteSky().dec()).isNotNull();
    assertThat(run.guided().rmsRadialArcsec()).isPositive();
    assertThat(run.periodic().components()).isEmpty();
    assertThat(because(result, "/periodic/peakToPeakArcsecAxis")).isNotEmpty();
    assertThat(run.noiseFloorArcsec().dec().covers(simulated.truth().dec().noiseArcsec())).isTrue();
    assertThat(run.responseArcsecPerSecond().dec().axis().covers(RATE)).isTrue();
    assertThat(result.night().learned().dec().response()).isLessThan(0.6);
  }

  @Test
  void logWithoutPulseColumnsTellsTheGuidingOnly() throws Exception {
    GuideRun night = run(PLAIN).log();
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 1000; i++) {
      frames.add(3 * i, night.frames().raArcsec(i), night.frames().decArcsec(i));
    }
    NightResult result = analysed(with(night, frames.build()));

    RunResult run = result.runs().get(0);
    assertThat(run.guided().rmsRadialArcsec()).isPositive();
    assertThat(run.periodic()).isNull();
    for (String figure :
        List.of(
            "/driftArcsecPerMinuteSky/ra",
            "/responseArcsecPerSecond/dec",
            "/noiseFloorArcsec/ra",
            "/periodic",
            "/backlashArcsecAxis/dec")) {
      assertThat(because(result, figure)).as(figure).contains("no pulses");
    }
  }

  @Test
  void unguidedRecordingTellsTheMount() throws Exception {
    SimulatedRun night = run(PLAIN.replace("pier_side", "guided = false\npier_side"));
    NightResult result = analysed(night.log());

    RunResult run = result.runs().get(0);
    assertMountKnown(run, night.truth());
    for (String figure : List.of("/responseArcsecPerSecond/ra", "/backlashArcsecAxis/dec")) {
      assertThat(because(result, figure)).as(figure).contains("no pulse was sent");
    }
  }

  /** Eight turns of the worm at 3 s, then eight at 1.5 s, so that the worm goes on evenly. */
  @Test
  void cadenceThatChangesLeavesTheMountKnown() throws Exception {
    String steady = PLAIN.replace("pier_side", "worm_phase_rad = 1\npier_side");
    SimulatedRun slow = run(steady);
    SimulatedRun fast =
        run(
            steady
                .replace("cadence_s = 3.0", "cadence_s = 1.5")
                .replace("guide_exposure_s = 2.0", "guide_exposure_s = 1.0"));
    FramesBuilder frames = new FramesBuilder();
    add(frames, slow.log().frames(), 0, 1277);
    add(frames, fast.log().frames(), 8 * 479, 2554);
    RunResult run = analysed(with(slow.log(), frames.build())).runs().get(0);

    assertMountKnown(run, slow.truth());
    assertThat(run.responseArcsecPerSecond().ra().axis().covers(RATE)).isTrue();
    assertThat(run.responseArcsecPerSecond().dec().axis().covers(RATE)).isTrue();
  }

  private static void add(FramesBuilder to, Frames from, double later, int count) {
    for (int i = 0; i < count; i++) {
      to.add(later + from.timeSeconds(i), from.raArcsec(i), from.decArcsec(i))
          .pulses(from.raPulseMillis(i), from.decPulseMillis(i));
      if (from.ditherStart(i)) {
        to.dither(from.ditherRaArcsec(i), from.ditherDecArcsec(i));
      }
      to.state(from.state(i));
    }
  }

  /** Why right ascension has no play depends on whether pulses can turn the gears back. */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1.5})
  void playInRightAscensionHasItsReason(double rate) throws Exception {
    NightResult result =
        analysed(
            run(PLAIN
                    .replace("guide_rate = 0.5", "guide_rate = " + rate)
                    .replace("duration_min = 120", "duration_min = 20"))
                .log());
    assertThat(result.runs().get(0).backlashArcsecAxis().ra()).isNull();
    assertThat(because(result, "/backlashArcsecAxis/ra").toLowerCase(Locale.ROOT))
        .contains(rate < 1 ? "never leave" : "no motion is lost");
  }
}
