package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.RunTruth;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guided nights with known truth: the response to pulses, the noise of a frame and the play of the
 * declination gears are found inside a closed loop, and within the bounds asked of them.
 */
@Tag("identity")
class KnownPulsesTest {
  private static final int NIGHTS = 12;
  private static final double DECLARED = 0.5 * 15.041067;
  private static final double EAST = 1.02;
  private static final double WEST = 0.98;
  private static final double NORTH = 0.97;
  private static final double SOUTH = 1.01;

  /** A figure of many nights against its truth. */
  private static final class Record {
    private final List<Double> errors = new ArrayList<>();
    private int covered;

    void add(Estimate estimate, double truth) {
      errors.add(estimate.value() - truth);
      covered += estimate.covers(truth) ? 1 : 0;
    }

    double bias() {
      return errors.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    double worst() {
      return errors.stream().mapToDouble(Math::abs).max().orElseThrow();
    }
  }

  @ParameterizedTest(name = "gain {0}, noise {1}, play {2}")
  @CsvSource({"0.6, 0.45, 0", "0.5, 0.30, 1.5", "0.9, 0.20, 4"})
  void pulsesNoiseAndPlayAreRecovered(double gain, double noise, double play) throws Exception {
    Record ra = new Record();
    Record dec = new Record();
    Record raNoise = new Record();
    Record decNoise = new Record();
    Record width = new Record();
    for (int seed = 1; seed <= NIGHTS; seed++) {
      SimulatedNight night = night(seed, gain, noise, play);
      RunResult run = analysed(night);
      RunTruth truth = night.runs().get(0).truth();
      ra.add(run.responseArcsecPerSecond().ra().axis(), DECLARED * (EAST + WEST) / 2);
      dec.add(run.responseArcsecPerSecond().dec().axis(), DECLARED * (NORTH + SOUTH) / 2);
      raNoise.add(run.noiseFloorArcsec().ra(), truth.ra().noiseArcsec());
      decNoise.add(run.noiseFloorArcsec().dec(), truth.dec().noiseArcsec());
      width.add(run.backlashArcsecAxis().dec(), play);
    }
    for (Record response : List.of(ra, dec)) {
      assertThat(Math.abs(response.bias()) / DECLARED).isLessThan(0.015);
      assertThat(response.covered).isGreaterThanOrEqualTo(10);
    }
    for (Record floor : List.of(raNoise, decNoise)) {
      assertThat(floor.worst() / noise).isLessThan(0.05);
      assertThat(floor.covered).isGreaterThanOrEqualTo(10);
    }
    assertThat(width.worst()).isLessThan(Math.max(0.4, 0.1 * play));
    assertThat(width.covered).isGreaterThanOrEqualTo(10);
  }

  /** A response far off the declared one: the motion is then taken out with the measured one. */
  @Test
  void wrongGuideRateIsMeasuredAndUsed() throws Exception {
    for (int seed = 1; seed <= 3; seed++) {
      SimulatedNight night =
          Simulation.run(
              ScenarioReader.parse(
                  "pulses",
                  KnownTruthTest.scenario(seed, 0.6, 0.45, 0)
                          .replace("response_east = 1.000", "response_east = 0.800")
                          .replace("response_west = 1.000", "response_west = 0.800")
                      + KnownTruthTest.WORM));
      RunResult run = analysed(night);
      assertThat(run.responseArcsecPerSecond().ra().axis().value() / DECLARED)
          .isBetween(0.75, 0.85);
      assertThat(run.periodic().components().get(0).amplitudeArcsecAxis().value())
          .isBetween(5.7, 6.3);
    }
  }

  private static RunResult analysed(SimulatedNight night) {
    List<SimulatedRun> runs = night.runs();
    return NightAnalysis.of(
            new Night("pulses", runs.stream().map(SimulatedRun::log).toList(), List.of()),
            Equipment.UNKNOWN,
            "test",
            true)
        .result()
        .runs()
        .get(0);
  }

  private static SimulatedNight night(int seed, double gain, double noise, double play)
      throws FormatException {
    String mount =
        "dec_backlash_arcsec = "
            + play
            + "\nresponse_north = "
            + NORTH
            + "\nresponse_south = "
            + SOUTH
            + "\n";
    return Simulation.run(
        ScenarioReader.parse(
            "pulses",
            KnownTruthTest.scenario(seed, gain, noise, EAST - 1) + mount + KnownTruthTest.WORM));
  }
}
