package io.github.roundstar.compare;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.NightAnalysis;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.CompareResult;
import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The whole way from frames to verdict: three simulated nights a side, gears that scatter by 7 %
 * and air by 10 % from night to night, the loop's gain not told.
 */
@Tag("long")
@Tag("identity")
class SimulatedPairsTest {
  private static final int PAIRS = 10;
  private static final int NIGHTS = 3;
  private static final double WORM = 5.8;
  private static final double AIR = 0.3;

  private final Random chance = new Random(8);
  private int number;

  private NightInput night(double worm, double air) throws FormatException {
    number++;
    double size = worm * (1 + 0.07 * chance.nextGaussian());
    String scenario =
        String.format(
            Locale.ROOT,
            """
            [night]
            seed = %d
            start = "2026-10-20T19:45:00+02:00"
            latitude_deg = 47.2
            longitude_deg = 11.6
            cadence_s = 3.0
            guide_exposure_s = 2.0
            [mount]
            guide_rate = 0.5
            worm_teeth = 180
            dec_backlash_arcsec = 1.5
            ra_wander_arcsec_per_root_s = 0.014
            dec_wander_arcsec_per_root_s = 0.010
            [[mount.harmonic]]
            order = 1
            amplitude_arcsec = %.4f
            [[mount.harmonic]]
            order = 2
            amplitude_arcsec = %.4f
            phase_rad = 0.7
            [noise]
            white_arcsec = %.4f
            [loop]
            pulse_limit_ms = 1000
            [loop.ra]
            gain = 0.4
            deadband_arcsec = 0.15
            [loop.dec]
            gain = 0.5
            deadband_arcsec = 0.3
            [dither]
            every_min = 12
            size_arcsec = 5
            settle_arcsec = 2.0
            [[run]]
            duration_min = 120
            declination_deg = 30
            hour_angle_h = -1
            pier_side = "west"
            """,
            number,
            size,
            0.4 * size,
            air * (1 + 0.1 * chance.nextGaussian()));
    List<SimulatedRun> runs = Simulation.run(ScenarioReader.parse("pair", scenario)).runs();
    Night night =
        new Night("night-" + number, runs.stream().map(SimulatedRun::log).toList(), List.of());
    return new NightInput(
        NightAnalysis.of(night, Equipment.UNKNOWN, "test", true).result(),
        "night-" + number,
        Optional.empty());
  }

  private List<NightInput> nights(double worm, double air) throws FormatException {
    List<NightInput> nights = new ArrayList<>();
    for (int i = 0; i < NIGHTS; i++) {
      nights.add(night(worm, air));
    }
    return nights;
  }

  private static CompareResult compare(List<NightInput> before, List<NightInput> after) {
    return Comparison.of(Sides.of(before, after), List.of(), "test").result();
  }

  private static long count(List<CompareResult> results, String figures, String verdict) {
    return results.stream()
        .filter(
            result ->
                result.figures().stream()
                    .anyMatch(f -> f.key().matches(figures) && f.verdict().matches(verdict)))
        .count();
  }

  @Test
  void verdictsHoldOnSimulatedNights() throws FormatException {
    List<CompareResult> same = new ArrayList<>();
    List<CompareResult> cut = new ArrayList<>();
    List<CompareResult> worseAir = new ArrayList<>();
    for (int pair = 0; pair < PAIRS; pair++) {
      List<NightInput> before = nights(WORM, AIR);
      same.add(compare(before, nights(WORM, AIR)));
      cut.add(compare(before, nights(0.7 * WORM, AIR)));
      worseAir.add(compare(before, nights(WORM, 2 * AIR)));
    }
    assertThat(count(same, ".*", "better|worse")).isLessThanOrEqualTo(1);
    assertThat(count(cut, "periodic-(worm|478-s|479-s)", ComparedFigure.BETTER))
        .isGreaterThanOrEqualTo(PAIRS - 1);
    assertThat(count(worseAir, "(periodic|polar|drift|backlash|response).*", "worse"))
        .isLessThanOrEqualTo(1);
    assertThat(count(worseAir, ".*equal-air", "worse")).isLessThanOrEqualTo(1);
    assertThat(worseAir)
        .filteredOn(result -> result.air().contains("worse RMS came from worse air"))
        .hasSizeGreaterThanOrEqualTo(PAIRS - 1);
  }
}
