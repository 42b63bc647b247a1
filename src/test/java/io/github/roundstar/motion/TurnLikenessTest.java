package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.simulate.SimulatedRun;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How far a worm repeats itself is found through the guiding. */
class TurnLikenessTest {
  @TempDir Path folder;

  private Answer<Double> repeatability(int seed, String mount, String run, double worm)
      throws Exception {
    SimulatedRun simulated = SimulatedRuns.of(seed, mount, run);
    Path file =
        Files.writeString(
            folder.resolve("equipment.toml"), "[mount]\nworm_period_s = " + worm + "\n");
    Equipment equipment = EquipmentReader.read(file);
    return AxisNight.ra(List.of(simulated.log()), equipment)
        .periodic()
        .then(PeriodicError::repeatability);
  }

  /**
   * A worm whose turns differ by a share u of themselves repeats by 1 / (1 + u^2). Eleven turns
   * know the variance of u to 45 %, three nights to 26 %; the bound is two such errors.
   */
  @ParameterizedTest(name = "turns differ by {0}")
  @Tag("identity")
  @CsvSource({"0, 0.003", "0.2, 0.025", "0.4, 0.075"})
  void changesFromTurnToTurnAreFound(double unsteadiness, double bound) throws Exception {
    double mean = 0;
    for (int seed = 1; seed <= 3; seed++) {
      mean +=
          repeatability(
                      seed, "worm_unsteadiness = " + unsteadiness + "\n", "worm_phase_rad = 0", 479)
                  .value()
                  .orElseThrow()
              / 3;
    }
    assertThat(mean).isCloseTo(1 / (1 + unsteadiness * unsteadiness), within(bound));
  }

  @Test
  void fewTurnsDoNotTell() throws Exception {
    assertThat(repeatability(1, "", "worm_phase_rad = 0", 1437).because()).isNotEmpty();
  }
}
