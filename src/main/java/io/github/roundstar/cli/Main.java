package io.github.roundstar.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.TimeZone;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.ScopeType;

/** The tool's entry point and its top command. */
@Command(
    name = "roundstar",
    description = "Reads the text log of a telescope guider and tells why stars trailed.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    scope = ScopeType.INHERIT,
    subcommands = {
      AnalyzeCommand.class,
      CompareCommand.class,
      SeasonCommand.class,
      LayoutCommand.class,
      StarsCommand.class,
      ToleranceCommand.class,
      SimulateCommand.class
    },
    synopsisSubcommandLabel = "COMMAND",
    footer = {"", "Example:", "  roundstar analyze sample-logs/good-night.ecsv"})
public final class Main implements Runnable {
  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  private Main() {}

  /** Runs the tool and ends the process with its exit code. */
  public static void main(String[] arguments) {
    Locale.setDefault(Locale.ROOT);
    TimeZone.setDefault(TimeZone.getTimeZone("UTC"));
    System.setProperty("java.awt.headless", "true");
    int code = run(writer(FileDescriptor.out), writer(FileDescriptor.err), arguments);
    System.exit(code);
  }

  /** Runs the tool with the given streams and returns its exit code. */
  static int run(PrintWriter out, PrintWriter err, String... arguments) {
    CommandLine line = new CommandLine(new Main());
    line.setOut(out).setErr(err);
    line.setExecutionExceptionHandler(Main::explain);
    line.setExpandAtFiles(false); // a log may be called @west.csv
    int code = line.execute(arguments);
    out.flush();
    err.flush();
    return code;
  }

  @Override
  public void run() {
    throw new CommandLine.ParameterException(
        spec.commandLine(),
        "Missing command: one of "
            + String.join(", ", spec.commandLine().getSubcommands().keySet()));
  }

  private static int explain(Exception failure, CommandLine command, ParseResult parsed) {
    ParseResult of = parsed;
    while (of.hasSubcommand()) {
      of = of.subcommand();
    }
    Complaint.print(command.getErr(), failure, of.hasMatchedOption("--verbose"));
    return ExitCode.of(failure).number();
  }

  private static PrintWriter writer(FileDescriptor descriptor) {
    return new PrintWriter(
        new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8), true);
  }
}
