package io.github.roundstar.cli;

import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.RepeatedLines;
import io.github.roundstar.pipeline.Compare;
import io.github.roundstar.pipeline.CompareJob;
import io.github.roundstar.pipeline.CompareOutcome;
import io.github.roundstar.pipeline.UnwritableOutputException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code roundstar compare}: whether nights after a change differ from those before it. */
@Command(
    name = "compare",
    description = "Tells whether the mount and the guiding are better after than before.",
    footer = {
      "",
      "Example:",
      "  roundstar compare --equipment sample-logs/equipment.toml \\",
      "      --before sample-logs/before-worm-adjustment.ecsv \\",
      "      --after sample-logs/after-worm-adjustment.ecsv"
    })
final class CompareCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private Loudness loudness;

  @Mixin private LogReading reading;

  @Option(
      names = "--before",
      required = true,
      arity = "1..*",
      paramLabel = "NIGHT",
      description = "Nights before: logs, JSON results, folders or patterns.")
  private List<String> before;

  @Option(
      names = "--after",
      required = true,
      arity = "1..*",
      paramLabel = "NIGHT",
      description = "Nights after, likewise.")
  private List<String> after;

  @Option(
      names = "--equipment",
      paramLabel = "FILE",
      description = "TOML file that describes site, mount and optics, for logs.")
  private Path equipment;

  @Override
  public Integer call() throws UnusableInputException, UnwritableOutputException {
    CompareOutcome outcome =
        Compare.run(
            new CompareJob(
                before,
                after,
                Optional.ofNullable(equipment),
                reading.layout(),
                reading.out(),
                reading.utcOffset(),
                Version.number()));
    PrintWriter err = spec.commandLine().getErr();
    outcome.unusable().forEach(err::println);
    RepeatedLines.shortened(outcome.warnings()).forEach(err::println);
    Complaint.print(err, outcome.faults(), loudness.verbose());
    outcome.result().ifPresent(result -> print(outcome));
    if (reading.open() && outcome.result().isPresent()) {
      Main.open(spec, outcome.report());
    }
    return ExitCode.of(outcome.faults(), outcome.unusable()).number();
  }

  private void print(CompareOutcome outcome) {
    PrintWriter stdout = spec.commandLine().getOut();
    if (loudness.quiet()) {
      stdout.println(outcome.json());
      stdout.println(outcome.report());
      return;
    }
    CompareLines.of(outcome.result().orElseThrow()).forEach(stdout::println);
    Complaint.lost(outcome.lost()).ifPresent(stdout::println);
    stdout.println(NightLines.line("figures", outcome.json()));
    stdout.println(NightLines.line("report", outcome.report()));
  }
}
