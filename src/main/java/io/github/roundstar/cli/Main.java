package io.github.roundstar.cli;

import java.io.File;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TimeZone;
import java.util.function.Supplier;
import java.util.stream.Stream;
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
    synopsisSubcommandLabel = "(COMMAND | LOG...)",
    footer = {
      "",
      "Logs without a command word are analyzed.",
      "",
      "Example:",
      "  roundstar --open sample-logs/good-night.ecsv"
    })
public final class Main implements Runnable {
  private static final String ANALYZE = "analyze";
  private static final Map<String, Supplier<Object>> COMMANDS = commands();
  private static final Set<String> OWN_OPTIONS = Set.of("-h", "--help", "-V", "--version");

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  private final Browser browser;

  private Main(Browser browser) {
    this.browser = browser;
  }

  /** Runs the tool and ends the process with its exit code. */
  public static void main(String[] arguments) {
    Locale.setDefault(Locale.ROOT);
    TimeZone.setDefault(TimeZone.getTimeZone("UTC"));
    System.setProperty("java.awt.headless", "true");
    PrintWriter out = writer(FileDescriptor.out);
    System.exit(run(out, writer(FileDescriptor.err), Browser.OF_THE_DESKTOP, arguments));
  }

  /** Runs the tool with the given streams and browser, and returns its exit code. */
  static int run(PrintWriter out, PrintWriter err, Browser browser, String... words) {
    String[] arguments = withCommand(words);
    CommandLine line = line(browser, arguments);
    line.setOut(out).setErr(err);
    line.setExecutionExceptionHandler(Main::explain);
    line.setExpandAtFiles(false); // a log may be called @west.csv
    int code = line.execute(arguments);
    out.flush();
    err.flush();
    return code;
  }

  /** The tool with all its commands, which opens no page. */
  static CommandLine line() {
    return line(Browser.NONE);
  }

  private static CommandLine line(Browser browser, String... arguments) {
    CommandLine line = new CommandLine(new Main(browser));
    // Each command's options take some milliseconds to gather.
    if (arguments.length > 0 && COMMANDS.containsKey(arguments[0])) {
      return line.addSubcommand(COMMANDS.get(arguments[0]).get());
    }
    COMMANDS.values().forEach(command -> line.addSubcommand(command.get()));
    return line;
  }

  /**
   * Logs without a command word are to be analyzed. A word that names no file and has no sign of a
   * path is a command misspelt.
   */
  private static String[] withCommand(String... words) {
    boolean logs =
        words.length > 0
            && !COMMANDS.containsKey(words[0])
            && (words[0].startsWith("-") ? !OWN_OPTIONS.contains(words[0]) : isPath(words[0]));
    return logs
        ? Stream.concat(Stream.of(ANALYZE), Stream.of(words)).toArray(String[]::new)
        : words;
  }

  private static boolean isPath(String word) {
    return word.chars().anyMatch(c -> "./\\*?[{".indexOf(c) >= 0) || new File(word).exists();
  }

  /**
   * Opens a page for {@code --open}, or says what to do instead; nothing that fails the command.
   */
  static void open(CommandLine.Model.CommandSpec command, Path page) {
    PrintWriter err = command.commandLine().getErr();
    ((Main) command.root().userObject())
        .browser
        .open(page.toAbsolutePath().normalize())
        .ifPresent(
            because -> err.println(page + ": not opened: " + because + ": open it in a browser"));
  }

  private static Map<String, Supplier<Object>> commands() {
    Map<String, Supplier<Object>> commands = new LinkedHashMap<>();
    commands.put(ANALYZE, AnalyzeCommand::new);
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
