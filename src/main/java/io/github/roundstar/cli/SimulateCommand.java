package io.github.roundstar.cli;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.pipeline.FileInPlace;
import io.github.roundstar.pipeline.UnwritableOutputException;
import io.github.roundstar.simulate.ExposureTableWriter;
import io.github.roundstar.simulate.Exposures;
import io.github.roundstar.simulate.FrameRenderer;
import io.github.roundstar.simulate.GuideTableWriter;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedExposure;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.Simulation;
import io.github.roundstar.simulate.TruthWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code roundstar simulate}: a scenario in, an invented night's log and its truth out. */
@Command(
    name = "simulate",
    description =
        "Plays an invented night of guiding and writes its log and, on request, its truth.",
    footer = {
      "",
      "Example:",
      "  roundstar simulate sample-logs/good-night.scenario.toml \\",
      "      --out night.ecsv --truth truth.toml"
    })
final class SimulateCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private Loudness loudness;

  @Parameters(paramLabel = "SCENARIO", description = "TOML file that describes the night.")
  private Path scenario;

  @Option(
      names = "--out",
      paramLabel = "LOG",
      defaultValue = "night.ecsv",
      description = "The log to write (default: ${DEFAULT-VALUE}).")
  private Path out;

  @Option(names = "--truth", paramLabel = "FILE", description = "TOML file for the true figures.")
  private Path truth;

  @Option(
      names = "--exposures",
      paramLabel = "FILE",
      description = "ECSV list for the exposures of the main camera.")
  private Path exposures;

  @Option(
      names = "--frames",
      paramLabel = "FOLDER",
      description = "Where FITS frames of the exposures go.")
  private Path frames;

  @Override
  public Integer call() throws IOException, FormatException, UnwritableOutputException {
    refuseOneFileForTwoThings();
    SimulatedNight night = Simulation.run(ScenarioReader.read(scenario));
    StringBuilder log = new StringBuilder();
    GuideTableWriter.write(night, log);
    FileInPlace.write(out, log.toString().getBytes(StandardCharsets.UTF_8));
    spec.commandLine().getOut().println(out);
    if (truth != null) {
      StringBuilder figures = new StringBuilder();
      TruthWriter.write(night, figures);
      FileInPlace.write(truth, figures.toString().getBytes(StandardCharsets.UTF_8));
      spec.commandLine().getOut().println(truth);
    }
    expose(night);
    return ExitCode.DONE.number();
  }

  private void expose(SimulatedNight night) throws IOException, UnwritableOutputException {
    if (exposures == null && frames == null) {
      return;
    }
    List<SimulatedExposure> taken = Exposures.of(night);
    if (taken.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          scenario
              + ": no exposure fits between the dithers: shorten seconds in the table [exposures]");
    }
    if (exposures != null) {
      StringBuilder list = new StringBuilder();
      ExposureTableWriter.write(night, taken, list);
      FileInPlace.write(exposures, list.toString().getBytes(StandardCharsets.UTF_8));
      spec.commandLine().getOut().println(exposures);
    }
    if (frames != null) {
      for (SimulatedExposure exposure : taken) {
        ByteArrayOutputStream image = new ByteArrayOutputStream();
        FrameRenderer.write(night, exposure, image);
        FileInPlace.write(frames.resolve(exposure.file()), image.toByteArray());
      }
      spec.commandLine().getOut().println(frames);
    }
  }

  private void refuseOneFileForTwoThings() {
    Set<Path> files = new HashSet<>();
    for (Path file : Arrays.asList(scenario, out, truth, exposures)) {
      if (file != null && !files.add(file.toAbsolutePath().normalize())) {
        throw new ParameterException(
            spec.commandLine(),
            file + ": named twice: give scenario, log, truth and exposures a file each");
      }
    }
  }
}
