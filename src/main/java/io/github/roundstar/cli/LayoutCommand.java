package io.github.roundstar.cli;

import io.github.roundstar.ingest.InferredLog;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.ingest.layout.LayoutText;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.pipeline.FileInPlace;
import io.github.roundstar.pipeline.UnwritableOutputException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
    Inference inference;
    try {
      inference = InferredLog.infer(log);
    } catch (UnusableInputException e) {
      sketch();
      throw e;
    }
    if (!loudness.quiet()) {
      print(inference);
    }
    String text = LayoutText.of(inference);
    boolean known = inference.isCertain();
    if (out != null && !known && !loudness.quiet()) {
      Optional<String> answers = Answers.onTerminal(inference.open());
      known = answers.isPresent();
      text += answers.map(lines -> "\n" + lines).orElse("");
    }
    if (out != null) {
      FileInPlace.write(out, text.getBytes(StandardCharsets.UTF_8));
      spec.commandLine().getOut().println(out);
    }
    return (known ? ExitCode.DONE : ExitCode.UNUSABLE_INPUT).number();
  }

  /** A log of which nothing could be worked out still gets a file to complete. */
  private void sketch() throws UnusableInputException, UnwritableOutputException {
    if (out != null) {
      FileInPlace.write(out, InferredLog.sketch(log).getBytes(StandardCharsets.UTF_8));
      spec.commandLine().getOut().println(out);
    }
  }

  /** The first frames in plain columns, and how many rows can be read. */
  private void frames(Inference inference, PrintWriter stdout) {
    try {
      GuideLog read = InferredLog.read(log, inference);
      GuideRun run = read.runs().get(0);
      String east = run.sense().ra() ? "E positive" : "one way positive";
      String north = run.sense().dec() ? "N positive" : "one way positive";
      stdout.println(
          "  seconds | RA offset arcsec, "
              + east
              + " | Dec offset arcsec, "
              + north
              + " | RA pulse ms | Dec pulse ms | state");
      Frames frames = run.frames();
      for (int i = 0; i < Math.min(5, frames.size()); i++) {
        stdout.println(
            String.format(
                Locale.ROOT,
                "  %.3f | %.3f | %.3f | %.0f | %.0f | %s",
                frames.timeSeconds(i),
                frames.raArcsec(i),
                frames.decArcsec(i),
                frames.hasPulses() ? frames.raPulseMillis(i) : Double.NaN,
                frames.hasPulses() ? frames.decPulseMillis(i) : Double.NaN,
                frames.state(i).name().toLowerCase(Locale.ROOT)));
      }
      stdout.println(
          String.format(
              Locale.ROOT,
              "  %d of %d rows can be read, in %d runs",
              read.source().rows() - read.source().unusable(),
              read.source().rows(),
              read.runs().size()));
    } catch (UnusableInputException e) {
      stdout.println("  not to be read so: " + printable(e.getMessage()));
    }
  }

  private void print(Inference inference) {
    PrintWriter stdout = spec.commandLine().getOut();
    stdout.println("First rows as understood:");
    if (inference.isCertain()) {
      frames(inference, stdout);
    } else {
      stdout.println(
          "  "
              + inference.layout().columns().stream()
                  .map(LayoutCommand::column)
                  .collect(Collectors.joining(" | ")));
      for (List<String> row : inference.firstRows()) {
        stdout.println("  " + printable(String.join(" | ", row)));
      }
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
