package io.github.roundstar.cli;

import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.RepeatedLines;
import io.github.roundstar.pipeline.Analysis;
import io.github.roundstar.pipeline.AnalysisJob;
import io.github.roundstar.pipeline.AnalysisOutcome;
import io.github.roundstar.pipeline.FinishedNight;
import io.github.roundstar.pipeline.UnwritableOutputException;
import io.github.roundstar.results.Level;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code roundstar analyze}: logs in, a report and a JSON result per night out. */
@Command(
    name = "analyze",
    description = "Analyses guide logs and writes one HTML report and one JSON file per night.",
    footer = {
      "",
      "Example:",
      "  roundstar analyze --equipment sample-logs/equipment.toml \\",
      "      sample-logs/good-night.ecsv"
    })
final class AnalyzeCommand implements Callable<Integer> {
  /** Of more nights than that the terminal shows the first, and the page of all nights the rest. */
  private static final int MOST_NIGHTS = 12;

  @Spec private CommandSpec spec;

  @Mixin private Loudness loudness;

  @Mixin private LogReading reading;

  @Parameters(
      arity = "1..*",
      paramLabel = "LOG",
      description = "A log, a folder of them, or a pattern such as 'march/*.ecsv'.")
  private List<String> logs;

  @Option(
      names = "--equipment",
      paramLabel = "FILE",
      description = "TOML file that describes site, mount and optics.")
  private Path equipment;

  @Option(
      names = "--exposures",
      paramLabel = "PATH",
      description = "Exposures of the main camera: a folder of FITS, raw or JPEG files, or a list.")
  private Path exposures;

  @Option(
      names = "--share",
      description = "Leave out of the JSON, too, what would tell where the telescope stands.")
  private boolean share;

  @Option(
      names = "--fail-on",
      paramLabel = "LEVEL",
      converter = FailOn.class,
      description =
          "End with exit code 1 when a finding weighs as much or more: fix-first, worth-fixing or"
              + " watch.")
  private Level failOn;

  @Option(
      names = "--show-site",
      description = "Let the report, too, tell exactly what gives the site away.")
  private boolean showSite;

  @Override
  public Integer call() throws UnusableInputException, UnwritableOutputException {
    if (share && showSite) {
      throw new ParameterException(
          spec.commandLine(), "--share and --show-site exclude each other: give one of them");
    }
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                logs,
                Optional.ofNullable(equipment),
                reading.layout(),
                reading.out(),
                reading.utcOffset(),
                !share,
                showSite,
                Version.number(),
                Optional.ofNullable(exposures)),
            ProgressLine.on(spec.commandLine().getErr(), loudness));
    PrintWriter err = spec.commandLine().getErr();
    outcome.unusable().forEach(err::println);
    RepeatedLines.shortened(outcome.warnings()).forEach(err::println);
    List<FinishedNight> nights = outcome.nights();
    for (int i = 0; i < nights.size(); i++) {
      nights.get(i).withoutCharts().ifPresent(err::println);
      if (loudness.quiet() || i < MOST_NIGHTS) {
        print(nights.get(i));
      }
    }
    if (!loudness.quiet() && nights.size() > MOST_NIGHTS) {
      spec.commandLine()
          .getOut()
          .printf(Locale.ROOT, "and %,d more nights%n", nights.size() - MOST_NIGHTS);
    }
    if (!loudness.quiet()) {
      Complaint.lost(outcome.lost()).ifPresent(spec.commandLine().getOut()::println);
    }
    outcome
        .index()
        .ifPresent(
            page ->
                spec.commandLine()
                    .getOut()
                    .println(loudness.quiet() ? page.toString() : "all nights " + page));
    Complaint.print(err, outcome.faults(), loudness.verbose());
    if (reading.open()) {
      outcome
          .index()
          .or(() -> nights.stream().findFirst().map(FinishedNight::report))
          .ifPresent(page -> Main.open(spec, page));
    }
    return exitCode(outcome).number();
  }

  private ExitCode exitCode(AnalysisOutcome outcome) {
    ExitCode code = ExitCode.of(outcome.faults(), outcome.unusable());
    return code == ExitCode.DONE && failOn != null && found(outcome) ? ExitCode.FINDING : code;
  }

  private boolean found(AnalysisOutcome outcome) {
    return outcome.nights().stream()
        .flatMap(night -> night.result().findings().stream())
        .anyMatch(finding -> finding.level().atLeast(failOn));
  }

  private void print(FinishedNight night) {
    PrintWriter stdout = spec.commandLine().getOut();
    if (loudness.quiet()) {
      stdout.println(night.json());
      stdout.println(night.report());
      return;
    }
    NightLines.of(night.result(), spec.commandLine().getColorScheme().ansi())
        .forEach(stdout::println);
    stdout.println(NightLines.line("figures", night.json()));
    stdout.println(NightLines.line("report", night.report()));
  }
}
