package io.github.roundstar.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.function.Supplier;
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
    synopsisSubcommandLabel = "COMMAND",
    footer = {"", "Example:", "  roundstar analyze sample-logs/good-night.ecsv"})
public final class Main implements Runnable {
  private static final Map<String, Supplier<Object>> COMMANDS = commands();

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
    CommandLine line = line(arguments);
    line.setOut(out).setErr(err);
    line.setExecutionExceptionHandler(Main::explain);
    line.setExpandAtFiles(false); // a log may be called @west.csv
    int code = line.execute(arguments);
    out.flush();
    err.flush();
    return code;
  }

  /** The tool with all its commands. */
  static CommandLine line() {
    CommandLine line = new CommandLine(new Main());
    COMMANDS.values().forEach(command -> line.addSubcommand(command.get()));
    return line;
  }

  /** The tool with the command that is asked for; with all where it is none of them. */
  private static CommandLine line(String... arguments) {
    // Each command's options take some milliseconds to gather.
    return arguments.length > 0 && COMMANDS.containsKey(arguments[0])
        ? new CommandLine(new Main()).addSubcommand(COMMANDS.get(arguments[0]).get())
        : line();
  }

  private static Map<String, Supplier<Object>> commands() {
    Map<String, Supplier<Object>> commands = new LinkedHashMap<>();
    commands.put("analyze", AnalyzeCommand::new);
    commands.put("compare", CompareCommand::new);
    commands.put("season", SeasonCommand::new);
    commands.put("layout", LayoutCommand::new);
    commands.put("stars", StarsCommand::new);
    commands.put("tolerance", ToleranceCommand::new);
    commands.put("simulate", SimulateCommand::new);
    return commands;
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
