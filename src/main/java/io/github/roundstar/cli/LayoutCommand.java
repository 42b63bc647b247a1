package io.github.roundstar.cli;

import io.github.roundstar.ingest.InferredLog;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.ingest.layout.LayoutText;
import io.github.roundstar.pipeline.FileInPlace;
import io.github.roundstar.pipeline.UnwritableOutputException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code roundstar layout}: works out how a text log is laid out, and says why. */
@Command(
    name = "layout",
    description = "Works out how a text log is laid out, says why, and writes a layout file.",
    footer = {
      "",
      "Example:",
      "  roundstar layout sample-logs/layouts/crane.log --out crane.layout.toml"
    })
final class LayoutCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private Loudness loudness;

  @Parameters(paramLabel = "LOG", description = "A text log.")
  private Path log;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "TOML file for the layout (default: none is written).")
  private Path out;

  @Override
  public Integer call() throws UnusableInputException, UnwritableOutputException {
    Inference inference = InferredLog.infer(log);
    if (!loudness.quiet()) {
      print(inference);
    }
    if (out != null) {
      FileInPlace.write(out, LayoutText.of(inference).getBytes(StandardCharsets.UTF_8));
      spec.commandLine().getOut().println(out);
    }
    return (inference.isCertain() ? ExitCode.DONE : ExitCode.UNUSABLE_INPUT).number();
  }

  private void print(Inference inference) {
    PrintWriter stdout = spec.commandLine().getOut();
    stdout.println("First rows as understood:");
    stdout.println(
        "  "
            + inference.layout().columns().stream()
                .map(LayoutCommand::column)
                .collect(Collectors.joining(" | ")));
    for (List<String> row : inference.firstRows()) {
      stdout.println("  " + printable(String.join(" | ", row)));
    }
    stdout.println("Decisions:");
    for (Decision decision : inference.decisions()) {
      stdout.println("  " + printable(decision.line()));
    }
    if (!inference.isCertain()) {
      stdout.println("Questions, as layout lines to choose from:");
      for (Decision decision : inference.open()) {
        stdout.println();
        stdout.println("# " + printable(decision.about() + ": " + decision.because()));
        decision.ask().lines().map(LayoutCommand::printable).forEach(stdout::println);
      }
    }
  }

  private static String column(ColumnRule rule) {
    return printable(rule.called()) + " = " + rule.means().word();
  }

  /** A log must not steer the terminal. */
  private static String printable(String text) {
    return text.replaceAll("\\p{Cntrl}", " ");
  }
}
