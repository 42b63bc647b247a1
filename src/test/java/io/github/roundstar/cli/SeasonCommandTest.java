package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A folder of nights: analysed once, kept while unchanged, no night stopped by another. */
class SeasonCommandTest {
  @TempDir static Path analysed;
  @TempDir Path folder;
  private Path logs;
  private Path out;

  @BeforeAll
  static void analyseOnce() throws IOException {
    fourNights(analysed.resolve("logs/deep/er"));
    Ran.of("season", analysed.resolve("logs"), "--out", analysed.resolve("out")).endsWith(0);
  }

  @BeforeEach
  void fourNights() throws IOException {
    logs = folder.resolve("logs/deep/er");
    out = folder.resolve("out");
    fourNights(logs);
  }

  private static void fourNights(Path logs) throws IOException {
    Files.createDirectories(logs);
    for (int night = 1; night <= 4; night++) {
      write(logs, night, 120);
    }
  }

  /** The output folder as a first call left it. */
  private void onceAnalysed() throws IOException {
    Files.createDirectories(out);
    try (Stream<Path> files = Files.list(analysed.resolve("out"))) {
      for (Path file : files.toList()) {
        Files.copy(file, out.resolve(file.getFileName()));
      }
    }
  }

  private static void write(Path logs, int night, int rows) throws IOException {
    GuideTables.write(
        logs,
        "night" + night + ".csv",
        GuideTables.header("start: '2026-10-0" + night + "T20:00:00+02:00', declination: 20")
            + GuideTables.rows(night, 0, rows));
  }

  private Ran season(Object... more) {
    Object[] arguments = new Object[4 + more.length];
    arguments[0] = "season";
    arguments[1] = folder.resolve("logs");
    arguments[2] = "--out";
    arguments[3] = out;
    System.arraycopy(more, 0, arguments, 4, more.length);
    return Ran.of(arguments);
  }

  private JsonNode result() throws IOException {
    return new ObjectMapper().readTree(out.resolve("season.json").toFile());
  }

  @Test
  void everyNightBelowTheFolderIsListedAndLinked() throws IOException {
    Ran ran = season().endsWith(0);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.out()).contains("4 analysed, 0 unchanged");
    CompareCommandTest.assertKeepsTo("roundstar.season-1.schema.json", out.resolve("season.json"));
    assertThat(result().get("nights")).hasSize(4);
    assertThat(Files.readString(out.resolve("season.html")))
        .contains("<a href=\"2026-10-03.html\">2026-10-03</a>");
    assertThat(out.resolve("2026-10-03.html")).exists();
  }

  /** Its own folder of changes is found, and a layout beside its log. */
  @Test
  void theSampleLogsAreASeasonAsShipped() throws IOException {
    Ran ran =
        Ran.of("season", "sample-logs", "--equipment", "sample-logs/equipment.toml", "--out", out)
            .endsWith(0);

    assertThat(ran.out()).contains("Worm adjusted on 2026-10-22");
    assertThat(result().get("unusable")).isEmpty();
    assertThat(Files.readString(out.resolve("season.html")))
        .contains("worm adjusted</text>", "leave alone", "change settings");
  }

  @Test
  void questionsOfAnUnknownLogAreOneLine() throws IOException {
    onceAnalysed();
    Files.copy(Path.of("sample-logs/layouts/loft.log"), logs.resolve("loft.log"));

    Ran ran = season().endsWith(3);

    assertThat(ran.errLines()).filteredOn(line -> line.contains("loft.log")).hasSize(1);
    assertThat(ran.err()).doesNotContain("[[setting]]");
  }

  @Test
  void onlyWhatChangedIsAnalysedAgain() throws IOException {
    onceAnalysed();
    String first = Files.readString(out.resolve("season.json"));
    FileTime old = FileTime.from(Instant.parse("2026-01-01T00:00:00Z"));
    Files.setLastModifiedTime(out.resolve("2026-10-02.json"), old);
    assertThat(season().endsWith(0).out()).contains("0 analysed, 4 unchanged");
    assertThat(Files.readString(out.resolve("season.json"))).isEqualTo(first);
    assertThat(Files.getLastModifiedTime(out.resolve("2026-10-02.json"))).isEqualTo(old);

    write(logs, 2, 150);
    write(logs, 5, 120);
    assertThat(season().endsWith(0).out()).contains("2 analysed, 3 unchanged");
    assertThat(result().at("/nights/1/result").asText()).isEqualTo("2026-10-02.json");

    Files.delete(out.resolve("2026-10-04.html"));
    assertThat(season().endsWith(0).out()).contains("1 analysed, 4 unchanged");
    Path equipment = Files.writeString(folder.resolve("mount.toml"), "[mount]\nname = \"Fell\"\n");
    assertThat(season("--equipment", equipment).endsWith(0).out())
        .contains("5 analysed, 0 unchanged");
  }

  @Test
  void twoLogsOfOneNightBelongTogetherEvenWhenOneCameLater() throws IOException {
    onceAnalysed();
    GuideTables.write(
        logs,
        "later.csv",
        GuideTables.header("start: '2026-10-03T22:00:00+02:00', declination: 20")
            + GuideTables.rows(9, 0, 120));
    assertThat(season().endsWith(0).out()).contains("1 analysed, 3 unchanged");
    assertThat(result().at("/nights/2/sha256")).hasSize(2);
    assertThat(season().endsWith(0).out()).contains("0 analysed, 4 unchanged");
  }

  @Test
  void aBadFileNeverStopsASeason() throws IOException {
    onceAnalysed();
    Files.write(logs.resolve("bad.csv"), new byte[] {0, 1, 2, 3});
    Ran ran = season().endsWith(3);
    assertThat(ran.err()).startsWith("bad.csv");
    assertThat(ran.out()).contains("0 analysed, 4 unchanged");
    assertThat(result().get("unusable")).hasSize(1);
  }

  @Test
  void changesMayBeATableOrToml() throws IOException {
    onceAnalysed();
    Path toml =
        Files.writeString(
            folder.resolve("c.toml"), "[[change]]\ndate = \"2026-10-03\"\nwhat = \"greased\"\n");
    Path table = Files.writeString(folder.resolve("c.csv"), "date,what\n2026-10-03,greased\n");
    season("--changes", toml).endsWith(0);
    JsonNode first = result().get("changes");
    assertThat(first.at("/0/nightsBefore").asInt()).isEqualTo(2);
    assertThat(first.at("/0/nightsAfter").asInt()).isEqualTo(2);
    assertThat(first.at("/0/figures").size()).isPositive();
    season("--changes", table).endsWith(0);
    assertThat(result().get("changes")).isEqualTo(first);
    CompareCommandTest.assertKeepsTo("roundstar.season-1.schema.json", out.resolve("season.json"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "c.toml | [[change]]; date = 'soon' | c.toml: change[1].date: found \"soon\"",
        "c.toml | [[change]]; day = '2026-10-03' | c.toml: ",
        "c.csv | date,what;22.10.2026,greased | c.csv:2: found \"22.10.2026\", expected a date",
        "c.csv | when,what;2026-10-22,greased | c.csv:1: no columns date and what"
      })
  void aWrongFileOfChangesIsNamed(String name, String text, String message) throws IOException {
    onceAnalysed();
    Path changes = Files.writeString(folder.resolve(name), text.replaceAll("; ?", "\n") + "\n");
    Ran ran = season("--changes", changes).endsWith(3);
    assertThat(ran.err()).startsWith(message);
  }

  @Test
  void aFolderWithoutLogsIsNamed() throws IOException {
    Path empty = Files.createDirectories(folder.resolve("empty"));
    Ran.of("season", empty, "--out", out).endsWith(3).saysOnly(empty.toString());
  }

  @Test
  void remainingTimeFollowsFromWhatIsDone() {
    assertThat(ProgressLine.text(1, 4, 10)).startsWith("1 of 4 analysed, about 30 s");
    assertThat(ProgressLine.text(10, 100, 60)).contains("about 9 min left");
  }

  /** A list of nights that somebody changed: names with folders are never opened. */
  @ParameterizedTest
  @ValueSource(strings = {"../secret.json", "x\\u0000.json"})
  void aRememberedNameWithAFolderIsNotOpened(String name) throws IOException {
    onceAnalysed();
    Path json = out.resolve("season.json");
    String before = Files.readString(json);
    Files.copy(out.resolve("2026-10-02.json"), folder.resolve("secret.json"));
    Files.writeString(json, before.replace("\"2026-10-02.json\"", '"' + name + '"'));

    assertThat(season().endsWith(0).out()).contains("4 analysed, 0 unchanged");
    assertThat(Files.readString(json)).isEqualTo(before);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "[",
        "{\"schema\": \"roundstar.season/1\", \"nights\": [null]}",
        "{\"schema\": \"roundstar.season/1\", \"nights\": [{\"sha256\": null}]}"
      })
  void aListOfNightsThatIsNoneIsMadeAnew(String text) throws IOException {
    onceAnalysed();
    Files.writeString(out.resolve("season.json"), text);

    assertThat(season().endsWith(0).out()).contains("4 analysed, 0 unchanged");
  }
}
