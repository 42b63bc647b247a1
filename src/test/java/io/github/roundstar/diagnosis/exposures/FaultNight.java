package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.diagnosis.NightAnalysis;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.ExposureReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.ExposureList;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.Faults;
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

/** A simulated night with a main camera, analysed from its log and its list of exposures. */
final class FaultNight {
  private FaultNight() {}

  /**
   * How a night's exposures were judged.
   *
   * @param all those that the fault spoilt, by their verdict
   * @param right those of them that have the fault's cause
   */
  record Tally(int all, int right) {
    boolean mostRight() {
      return 2 * right > all;
    }
  }

  /** What a night leaves behind: the log's runs and the main camera's exposures. */
  record Taken(List<GuideRun> runs, ExposureList exposures) {
    List<Exposure> judged(Equipment equipment) {
      return NightAnalysis.of(
              new Night("2026-01-01", runs, List.of()),
              equipment,
              "0",
              true,
              Optional.of(new MainCamera(exposures.frames(), Map.of(), List.of())),
              new Faults())
          .result()
          .exposures();
    }
  }

  static Taken taken(String toml, Path folder)
      throws FormatException, IOException, UnusableInputException {
    SimulatedNight night = Simulation.run(ScenarioReader.parse("scenario", toml));
    StringBuilder list = new StringBuilder();
    ExposureTableWriter.write(night, Exposures.of(night), list);
    Path file = folder.resolve("exposures.ecsv");
    Files.writeString(file, list);
    ExposureList exposures = ExposureReader.read(file);
    if (!exposures.problems().isEmpty()) {
      throw new IllegalStateException(exposures.problems().get(0));
    }
    return new Taken(night.runs().stream().map(SimulatedRun::log).toList(), exposures);
  }

  static List<Exposure> judged(String toml, Equipment equipment, Path folder)
      throws FormatException, IOException, UnusableInputException {
    return taken(toml, folder).judged(equipment);
  }

  static Tally tally(SingleFault fault, String scenario, Path folder)
      throws FormatException, IOException, UnusableInputException {
    List<Exposure> spoilt =
        judged(scenario, fault.equipment(), folder).stream()
            .filter(exposure -> exposure.verdict().equals(fault.verdict()))
            .toList();
    long right = spoilt.stream().filter(e -> fault.cause.equals(e.cause())).count();
    return new Tally(spoilt.size(), (int) right);
  }
}
