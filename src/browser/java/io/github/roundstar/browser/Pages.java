package io.github.roundstar.browser;

import io.github.roundstar.pipeline.Analysis;
import io.github.roundstar.pipeline.AnalysisJob;
import io.github.roundstar.pipeline.Compare;
import io.github.roundstar.pipeline.CompareJob;
import io.github.roundstar.pipeline.Progress;
import io.github.roundstar.pipeline.SeasonJob;
import io.github.roundstar.pipeline.SeasonRun;
import io.github.roundstar.simulate.Exposures;
import io.github.roundstar.simulate.FrameRenderer;
import io.github.roundstar.simulate.GuideTableWriter;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedExposure;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.Simulation;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** One page of every kind, made of the sample logs by the code of today. */
final class Pages {
  private static final Path SAMPLES = Path.of("sample-logs");
  private static final Optional<Path> EQUIPMENT = Optional.of(SAMPLES.resolve("equipment.toml"));

  private Pages() {}

  /** Writes nights, their index, a comparison and a season into a folder; the pages. */
  static List<Path> write(Path folder) throws Exception {
    Analysis.run(
        new AnalysisJob(
            List.of(SAMPLES.toString()),
            EQUIPMENT,
            Optional.empty(),
            folder,
            Optional.empty(),
            true,
            "test"));
    Compare.run(
        new CompareJob(
            List.of(SAMPLES.resolve("before-worm-adjustment.ecsv").toString()),
            List.of(SAMPLES.resolve("after-worm-adjustment.ecsv").toString()),
            EQUIPMENT,
            Optional.empty(),
            folder,
            Optional.empty(),
            "test"));
    SeasonRun.run(
        new SeasonJob(
            SAMPLES,
            Optional.empty(),
            EQUIPMENT,
            Optional.empty(),
            folder.resolve("season"),
            Optional.empty(),
            "test"),
        Progress.SILENT);
    Files.move(folder.resolve("season/season.html"), folder.resolve("season.html"));
    exposureNight(folder);
    return in(folder);
  }

  /** A worm that trails the main camera's exposures, whose images were measured. */
  private static void exposureNight(Path folder) throws Exception {
    String scenario =
        Files.readString(SAMPLES.resolve("strong-periodic-error.scenario.toml"))
            .replace("2026-10-11", "2026-11-02")
            .replace("gain = 0.4", "gain = 0.12");
    SimulatedNight night =
        Simulation.run(
            ScenarioReader.parse(
                "exposures", scenario + "\n[exposures]\nseconds = 900\nstars = 30\n"));
    Path images = Files.createDirectories(folder.resolve("images"));
    for (SimulatedExposure exposure : Exposures.of(night)) {
      try (OutputStream image = Files.newOutputStream(images.resolve(exposure.file()))) {
        FrameRenderer.write(night, exposure, image);
      }
    }
    Path log = folder.resolve("exposures.ecsv");
    try (Writer out = Files.newBufferedWriter(log)) {
      GuideTableWriter.write(night, out);
    }
    Analysis.run(
        new AnalysisJob(
            List.of(log.toString()),
            EQUIPMENT,
            Optional.empty(),
            folder,
            Optional.empty(),
            true,
            false,
            "test",
            Optional.of(images)));
  }

  private static List<Path> in(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.toString().endsWith(".html"))
          .map(Path::toAbsolutePath)
          .sorted()
          .toList();
    }
  }
}
