package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.NightAnalysis;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.ExposureReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.ExposureList;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Exposure;
import io.github.roundstar.simulate.ExposureTableWriter;
import io.github.roundstar.simulate.Exposures;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What trailed the exposures of simulated nights with one fault is found. */
class ExposureCauseTest {
  @TempDir private Path temporary;

  private List<Exposure> judged(String toml, Equipment equipment)
      throws FormatException, IOException, UnusableInputException {
    SimulatedNight night = Simulation.run(ScenarioReader.parse("scenario", toml));
    StringBuilder list = new StringBuilder();
    ExposureTableWriter.write(night, Exposures.of(night), list);
    Path file = temporary.resolve("exposures.ecsv");
    Files.writeString(file, list);
    ExposureList exposures = ExposureReader.read(file);
    assertThat(exposures.problems()).isEmpty();
    List<GuideRun> runs = night.runs().stream().map(SimulatedRun::log).toList();
    return NightAnalysis.of(
            new Night("2026-01-01", runs, List.of()),
            equipment,
            "0",
            true,
            Optional.of(new MainCamera(exposures.frames(), Map.of(), List.of())))
        .result()
        .exposures();
  }

  /** Trailed exposures, and those of them that have the fault's cause. */
  private int[] tally(SingleFault fault, long seed)
      throws FormatException, IOException, UnusableInputException {
    int[] tally = new int[2];
    for (Exposure exposure : judged(fault.scenario(seed), fault.equipment())) {
      if (exposure.verdict().equals(fault.verdict())) {
        tally[0]++;
        tally[1] += fault.cause.equals(exposure.cause()) ? 1 : 0;
      }
    }
    return tally;
  }

  @Tag("identity")
  @ParameterizedTest
  @EnumSource
  void causeOfANightWithOneFaultIsFound(SingleFault fault)
      throws FormatException, IOException, UnusableInputException {
    int[] tally = tally(fault, 1);
    assertThat(tally[0]).isGreaterThanOrEqualTo(3);
    assertThat(tally[1]).isGreaterThanOrEqualTo((int) Math.ceil(0.8 * tally[0]));
  }

  @Tag("long")
  @Tag("identity")
  @Test
  void causeIsRightOnNinetyFiveOfAHundred()
      throws FormatException, IOException, UnusableInputException {
    int right = 0;
    int nights = 0;
    for (SingleFault fault : SingleFault.values()) {
      for (long seed = 101; seed <= 110; seed++) {
        int[] tally = tally(fault, seed);
        if (tally[0] > 0) {
          nights++;
          right += 2 * tally[1] > tally[0] ? 1 : 0;
        }
      }
    }
    assertThat(100.0 * right / nights).isGreaterThanOrEqualTo(95);
  }

  @Tag("identity")
  @Test
  void exposuresOfAGoodNightAreRound() throws FormatException, IOException, UnusableInputException {
    List<Exposure> exposures =
        judged(SingleFault.OPTICS.scenario(3).replace("1.35", "1.0"), Equipment.UNKNOWN);
    assertThat(exposures).hasSizeGreaterThan(10);
    assertThat(exposures).noneMatch(e -> e.verdict().equals("trailed"));
    assertThat(exposures).filteredOn(e -> e.verdict().equals("round")).hasSizeGreaterThan(9);
    assertThat(exposures).allMatch(e -> e.cause() == null);
  }
}
