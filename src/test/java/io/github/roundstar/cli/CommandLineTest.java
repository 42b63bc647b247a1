package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a careful stranger would try: help, wrong options, odd places for the results. */
class CommandLineTest {
  private static final String SCENARIO =
      """
      [night]
      cadence_s = 3
      [[run]]
      duration_min = 3
      """;

  @TempDir Path folder;
  private Path log;
  private Path out;

  @BeforeEach
  void writeLog() throws IOException {
    log = GuideTables.write(folder, "night.csv", GuideTables.good(1));
    out = folder.resolve("a/b");
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"-h", "--help"})
  void helpShowsAnExampleThatCanBeCopied(String option) {
    for (Ran help :
        List.of(
            Ran.of(option),
            Ran.of("analyze", option),
            Ran.of("compare", option),
            Ran.of("season", option),
            Ran.of("simulate", option))) {
      help.endsWith(0);
      assertThat(help.err()).isEmpty();
      assertThat(help.outLines()).allMatch(line -> line.length() <= 80);
      List<String> lines = help.outLines();
      int example = lines.indexOf("Example:") + 1;
      assertThat(example).isPositive();
      assertThat(lines.get(example)).startsWith("  roundstar ");
      // A second line belongs to the first only where the shell is told so.
      for (int i = example; i < lines.size() - 1; i++) {
        assertThat(lines.get(i)).endsWith(" \\");
      }
    }
  }

  @Test
  void examplesOfTheHelpWork() throws IOException {
    for (String command : List.of("analyze", "simulate")) {
      String help = Ran.of(command, "--help").out();
      String example = help.substring(help.indexOf("Example:") + "Example:".length());
      Object[] words =
          Stream.of(example.replace("\\", " ").strip().split("\\s+"))
              .skip(1)
              .map(word -> word.matches("night\\.ecsv|truth\\.toml") ? folder.resolve(word) : word)
              .toArray();
      Object[] withOut = Stream.concat(Stream.of(words), Stream.of("--out", out)).toArray();
      Ran.of(command.equals("analyze") ? withOut : words).endsWith(0);
    }
    assertThat(names(out))
        .containsExactly("2026-10-08.html", "2026-10-08.json", "2026-10-08.worm.ecsv");
    assertThat(folder.resolve("truth.toml")).isNotEmptyFile();
  }

  @ParameterizedTest
  @ValueSource(strings = {"-V", "--version"})
  void versionIsOneLine(String option) {
    for (Ran version : List.of(Ran.of(option), Ran.of("analyze", option))) {
      version.endsWith(0);
      assertThat(version.out()).matches("roundstar \\d+\\.\\d+\\.\\d+\\S*\\R");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
                                         | Missing command
          analyse x                      | roundstar analyze
          --loud                         | Missing required parameter: 'LOG'
          analyze                        | Missing required parameter: 'LOG'
          analyze --loud LOG             | Unknown option: '--loud'
          analyze LOG --out              | Missing required parameter for option '--out'
          analyze LOG --utc-offset noon  | 'noon' is not an offset such as +01:00
          analyze LOG --utc-offset +1:00 | '+1:00' is not an offset such as +01:00
          analyze LOG --utc-offset 25    | '25' is not an offset such as +01:00
          analyze LOG --out OUT --out x  | option '--out' (FOLDER) should be specified only once
          simulate                       | Missing required parameter: 'SCENARIO'
          simulate a b                   | Unmatched argument at index 2: 'b'
          """)
  void wrongUseIsExplainedAndNothingIsWritten(String line, String message) throws IOException {
    String words = line == null ? "" : line;
    Object[] arguments =
        Stream.of(words.split(" "))
            .filter(word -> !word.isEmpty())
            .map(word -> word.equals("LOG") ? log : word.equals("OUT") ? out : word)
            .toArray();

    Ran ran = Ran.of(arguments).endsWith(2);

    assertThat(ran.err()).contains(message);
    assertThat(ran.out()).isEmpty();
    assertThat(names(folder)).containsExactly("night.csv");
  }

  @Test
  void logsWithoutACommandAreAnalyzed() throws IOException {
    for (List<Object> words :
        List.<List<Object>>of(
            List.of(log, "--out", out),
            List.of("--quiet", "--out", out, folder),
            List.of(folder))) {
      assertThat(words).isNotEmpty();
      Object[] arguments = Stream.concat(words.stream(), Stream.of("--out=" + out)).toArray();
      Ran.of(words.contains("--out") ? words.toArray() : arguments).endsWith(0);
      assertThat(names(out)).hasSize(2);
    }
  }

  @Test
  void pageIsOpenedOnlyWhenAsked() {
    List<Path> opened = new ArrayList<>();
    Browser browser =
        page -> {
          opened.add(page);
          return Optional.empty();
        };
    Ran.with(browser, "analyze", log, "--out", out).endsWith(0);
    assertThat(opened).isEmpty();

    Ran ran = Ran.with(browser, log, "--open", "--out", out).endsWith(0);

    assertThat(ran.err()).isEmpty();
    assertThat(opened).hasSize(1);
    assertThat(opened.get(0)).isAbsolute().exists().hasParent(out).hasExtension("html");
  }

  @Test
  void withoutABrowserThePageIsNamed() {
    Ran ran = Ran.of(log, "--open", "--out", out).endsWith(0);

    ran.saysOnly(out.toString());
    assertThat(ran.err()).contains(".html: not opened: no browser here: open it in a browser");
  }

  @Test
  @Tag("identity")
  void everyKindOfDesktopHasItsCommand() {
    String page = "file:///a%20b.html";
    assertThat(Browser.command("Linux", page)).containsExactly("xdg-open", page);
    assertThat(Browser.command("Mac OS X", page)).containsExactly("open", page);
    assertThat(Browser.command("Windows 11", page)).first().isEqualTo("rundll32");
  }

  @ParameterizedTest
  @ValueSource(strings = {"+01:00", "-05:00", "Z", "+14"})
  void offsetsOfAnySignAreTaken(String offset) {
    Ran.of("analyze", "--utc-offset", offset, "--out", out, log).endsWith(0);
  }

  @Test
  void summaryAndPathsGoToStdoutAndNothingToStderr() throws IOException {
    Ran ran = Ran.of("analyze", log, "--out", out).endsWith(0);

    assertThat(ran.err()).isEmpty();
    assertThat(names(out)).hasSize(2);
    String stem = names(out).get(0).replace(".html", "");
    assertThat(ran.outLines().get(0)).startsWith(stem + "  1 run, 3 min guided, 60 of 60 frames");
    assertThat(ran.outLines())
        .endsWith(
            "  figures  " + out.resolve(stem + ".json"),
            "  report   " + out.resolve(stem + ".html"));
  }

  @Test
  void quietPrintsThePathsOnly() throws IOException {
    Ran ran = Ran.of("analyze", "--quiet", log, "--out", out).endsWith(0);

    assertThat(ran.outLines()).hasSize(2).allMatch(path -> Files.isRegularFile(Path.of(path)));
    Path scenario = GuideTables.write(folder, "own.toml", SCENARIO);
    Ran simulated = Ran.of("simulate", "--quiet", scenario, "--out", out.resolve("x.ecsv"));
    assertThat(simulated.endsWith(0).outLines()).containsExactly(out + "/x.ecsv");
  }

  @Test
  void verboseAloneShowsStackTraces() {
    Path gone = folder.resolve("gone.toml");

    Ran.of("simulate", gone).endsWith(3);
    assertThat(Ran.of("simulate", "--verbose", gone).err()).contains("\tat io.github.roundstar.");
    assertThat(Ran.of("analyze", "--verbose", log, "--equipment", gone).err())
        .contains("\tat io.github.roundstar.");
  }

  @Test
  void whatFollowsTwoHyphensIsALog() throws IOException {
    Ran.of("analyze", "--out", out, "--", "--verbose")
        .endsWith(3)
        .saysOnly("--verbose: no such file");
  }

  @Test
  void aPlaceThatCannotBeWrittenToIsWrongUseAndLeavesWhatIsThere() throws IOException {
    Path file = GuideTables.write(folder, "file", "mine");

    Ran ran = Ran.of("analyze", log, "--out", file).endsWith(2);
    assertThat(ran.err()).contains("a file stands where its folder should be");
    assertThat(ran.errLines()).hasSize(1);
    Ran.of("analyze", log, "--out", file.resolve("deeper")).endsWith(2);
    Path scenario = GuideTables.write(folder, "own.toml", SCENARIO);
    Ran.of("simulate", scenario, "--out", file.resolve("x.ecsv")).endsWith(2);
    Ran.of("simulate", scenario, "--out", folder).endsWith(2);

    assertThat(file).hasContent("mine");
    assertThat(names(folder)).containsExactly("file", "night.csv", "own.toml");
  }

  @Test
  void anEarlierReportOutlivesAFailure() throws IOException {
    Ran.of("analyze", log, "--out", out).endsWith(0);
    String stem = names(out).get(0).replace(".html", "");
    Path html = out.resolve(stem + ".html");
    Path json = out.resolve(stem + ".json");
    byte[] earlier = Files.readAllBytes(json);
    Files.delete(html);
    Files.createDirectory(html);
    Path equipment =
        GuideTables.write(folder, "own.toml", "[imaging]\nfocal_length_mm=500\npixel_um=3\n");

    Ran.of("analyze", log, "--equipment", equipment, "--out", out).endsWith(2);

    assertThat(json).hasBinaryContent(earlier);
    assertThat(names(out)).containsExactly(stem + ".html", stem + ".json");
  }

  @Test
  void simulateNeverWritesOverItsScenarioNorTwoThingsIntoOneFile() throws IOException {
    Path scenario = GuideTables.write(folder, "own.toml", SCENARIO);

    Ran.of("simulate", scenario, "--out", folder.resolve("./own.toml")).endsWith(2);
    Ran.of("simulate", scenario, "--out", out, "--truth", out).endsWith(2);
    Ran.of("simulate", scenario, "--out", out, "--truth", scenario).endsWith(2);

    assertThat(scenario).hasContent(SCENARIO);
    assertThat(out).doesNotExist();
  }

  @Test
  void aSimulatedNightIsAnalysed() throws IOException {
    Path scenario = GuideTables.write(folder, "own.toml", SCENARIO);

    Ran.of("simulate", scenario, "--out", folder.resolve("sim.ecsv")).endsWith(0);

    assertThat(Ran.of("analyze", folder.resolve("sim.ecsv"), "--out", out).endsWith(0).err())
        .isEmpty();
  }

  @Test
  void sharingLeavesOutWhatTellsTheSite() throws IOException {
    Ran.of("analyze", "sample-logs/good-night.ecsv", "--share", "--out", out).endsWith(0);

    String json = Files.readString(out.resolve("2026-10-08.json"));
    assertThat(json)
        .contains("\"hourAngleHours\": null")
        .doesNotContain("-2.6,", "47.2", "11.6", "latitude_", "ongitude", "sample-logs");
  }

  @Test
  void failOnTellsScriptsOfFindings() {
    assertThat(Ran.of("analyze", "--out", out, "--fail-on", "fix-first", log).code()).isZero();
    Ran.of("analyze", "--out", out, "--fail-on", "watch", log).endsWith(1);
    Ran.of("analyze", "--out", out, "--fail-on", "watch", log, folder.resolve("none.csv"))
        .endsWith(3);
    Ran wrong = Ran.of("analyze", "--out", out, "--fail-on", "fine", log).endsWith(2);
    assertThat(wrong.err())
        .contains("'fine' is not a level: give fix-first, worth-fixing or watch");
  }
}
