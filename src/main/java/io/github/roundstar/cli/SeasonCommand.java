package io.github.roundstar.cli;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.RepeatedLines;
import io.github.roundstar.pipeline.SeasonJob;
import io.github.roundstar.pipeline.SeasonOutcome;
import io.github.roundstar.pipeline.SeasonRun;
import io.github.roundstar.pipeline.UnwritableOutputException;
import io.github.roundstar.results.PromiseKept;
import io.github.roundstar.results.SeasonChange;
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
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code roundstar season}: every night below a folder, and what moves from night to night. */
@Command(
    name = "season",
    description =
        "Analyses every night below a folder, shows what moves along the season and what work on"
            + " the mount did. Nights that did not change are not analysed again.",
    footer = {
      "",
      "Example:",
      "  roundstar season sample-logs --equipment sample-logs/equipment.toml \\",
      "      --out season"
    })
final class SeasonCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private Loudness loudness;

  @Mixin private LogReading reading;

  @Parameters(paramLabel = "FOLDER", description = "Holds the logs, in folders of any depth.")
  private Path folder;

  @Option(
      names = "--changes",
      paramLabel = "FILE",
      description =
          "Dates of work on the mount: TOML, or a table with columns date and what (default:"
              + " changes.toml in the folder, if there is one).")
  private Path changes;

  @Option(
      names = "--equipment",
      paramLabel = "FILE",
      description = "TOML file that describes site, mount and optics.")
  private Path equipment;

  @Override
  public Integer call() throws UnusableInputException, FormatException, UnwritableOutputException {
    PrintWriter err = spec.commandLine().getErr();
    SeasonOutcome outcome =
        SeasonRun.run(
            new SeasonJob(
                folder,
                Optional.ofNullable(changes),
                Optional.ofNullable(equipment),
                reading.layout(),
                reading.out(),
                reading.utcOffset(),
                Version.number()),
            ProgressLine.on(err, loudness));
    outcome.result().unusable().forEach(err::println);
    RepeatedLines.shortened(outcome.result().noticed()).forEach(err::println);
    Complaint.print(err, outcome.faults(), loudness.verbose());
    print(outcome);
    if (reading.open()) {
      Main.open(spec, outcome.index());
    }
    return ExitCode.of(outcome.faults(), outcome.result().unusable()).number();
  }

  private void print(SeasonOutcome outcome) {
    PrintWriter stdout = spec.commandLine().getOut();
    if (!loudness.quiet()) {
      stdout.println(outcome.result().summary());
      List<PromiseKept> promises = outcome.result().promises();
      if (!promises.isEmpty()) {
        stdout.println("  promise  " + promises.get(promises.size() - 1).text());
      }
      for (SeasonChange change : outcome.result().changes()) {
        stdout.println("  " + change.date() + "  " + change.what() + ": " + change.summary());
      }
      stdout.println(
          String.format(
              Locale.ROOT,
              "  nights   %d analysed, %d unchanged",
              outcome.analysed(),
              outcome.kept()));
    }
    if (!loudness.quiet()) {
      Complaint.lost(outcome.lost()).ifPresent(stdout::println);
    }
    stdout.println(loudness.quiet() ? outcome.json() : NightLines.line("figures", outcome.json()));
    stdout.println(loudness.quiet() ? outcome.index() : NightLines.line("report", outcome.index()));
  }
}
