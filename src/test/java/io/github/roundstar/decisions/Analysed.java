package io.github.roundstar.decisions;

import static java.nio.charset.StandardCharsets.UTF_8;

import io.github.roundstar.pipeline.Analysis;
import io.github.roundstar.pipeline.AnalysisJob;
import io.github.roundstar.pipeline.AnalysisOutcome;
import io.github.roundstar.worlds.Kind;
import io.github.roundstar.worlds.WorldNight;
import io.github.roundstar.worlds.WorldNight.Precision;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** A night of the second simulator through the whole tool, in this process. */
final class Analysed {
  private Analysed() {}

  /** The JSON of a night; its files are gone afterwards. */
  static ToldLadder json(Kind.Drawn drawn) throws Exception {
    Path folder = Files.createTempDirectory("decision");
    try {
      AnalysisOutcome outcome = run(List.of(drawn.night()), drawn, folder);
      return ToldLadder.read(outcome.nights().get(0).json());
    } finally {
      delete(folder);
    }
  }

  /** Nights of one owner, each a log of its own, and the exposures of the first. */
  static AnalysisOutcome run(List<WorldNight> nights, Kind.Drawn drawn, Path folder)
      throws Exception {
    List<String> logs = new ArrayList<>();
    for (int i = 0; i < nights.size(); i++) {
      Path log = folder.resolve("night-" + (i + 1) + ".ecsv");
      Files.writeString(log, nights.get(i).guideTable(Precision.ROUNDED), UTF_8);
      logs.add(log.toString());
    }
    Path equipment = folder.resolve("equipment.toml");
    Files.writeString(equipment, drawn.night().equipment(), UTF_8);
    Optional<Path> exposures = Optional.empty();
    if (drawn.exposureList().isPresent()) {
      exposures = Optional.of(folder.resolve("exposures.csv"));
      Files.writeString(exposures.get(), drawn.exposureList().get(), UTF_8);
    }
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                logs,
                Optional.of(equipment),
                Optional.empty(),
                folder.resolve("out"),
                Optional.empty(),
                true,
                false,
                "test",
                exposures));
    if (!outcome.faults().isEmpty()) {
      throw new AssertionError(
          drawn + ": " + outcome.faults().get(0).told(), outcome.faults().get(0).cause());
    }
    if (outcome.nights().size() != nights.size()) {
      throw new AssertionError(
          drawn
              + ": "
              + outcome.nights().size()
              + " nights of "
              + nights.size()
              + ", "
              + outcome.unusable());
    }
    return outcome;
  }

  static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
