package io.github.roundstar.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.roundstar.results.NightJson;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A result takes the place of an earlier one only if all of the earlier one's inputs went into it;
 * else it takes the first digits of its input's hash into its name. Nothing is left half done.
 */
class ResultFilesTest {
  @TempDir Path folder;
  private Path out;
  private Path first;
  private Path second;
  private Path third;

  @BeforeEach
  void writeLogs() throws IOException {
    out = folder.resolve("out");
    first = log("first.ecsv", 1, "20:00");
    second = log("second.ecsv", 2, "21:00");
    third = log("third.ecsv", 3, "22:00");
  }

  private Path log(String name, long seed, String start) throws IOException {
    StringBuilder text =
        new StringBuilder(
            """
            # %ECSV 1.0
            # ---
            # delimiter: ','
            # datatype:
            # - {name: time, unit: s, datatype: float64}
            # - {name: ra_offset, unit: arcsec, datatype: float64}
            # - {name: dec_offset, unit: arcsec, datatype: float64}
            # meta: {start: '2026-10-08T%s:00+02:00'}
            time,ra_offset,dec_offset
            """
                .replace("%s", start));
    Random random = new Random(seed);
    for (int i = 0; i < 30; i++) {
      text.append(
          String.format(
              Locale.ROOT, "%d,%.3f,%.3f\n", 3 * i, random.nextGaussian(), random.nextGaussian()));
    }
    return Files.writeString(folder.resolve(name), text);
  }

  private String analyse(Path... logs) throws Exception {
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                Stream.of(logs).map(Path::toString).toList(),
                Optional.empty(),
                Optional.empty(),
                out,
                Optional.empty(),
                true,
                "test"));
    assertThat(outcome.unusable()).isEmpty();
    assertThat(outcome.faults()).isEmpty();
    FinishedNight night = outcome.nights().get(0);
    String stem = night.json().getFileName().toString().replace(".json", "");
    assertThat(night.report()).isEqualTo(out.resolve(stem + ".html")).isRegularFile();
    return stem;
  }

  private List<String> inputs(String stem) throws IOException {
    return NightJson.read(Files.readAllBytes(out.resolve(stem + ".json"))).inputs().stream()
        .map(input -> input.file().replace(".ecsv", ""))
        .toList();
  }

  private List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(out)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void theSameCommandTwiceGivesTheSameFiles() throws Exception {
    analyse(first, second);
    List<String> names = files();
    byte[] json = Files.readAllBytes(out.resolve("2026-10-08.json"));
    byte[] html = Files.readAllBytes(out.resolve("2026-10-08.html"));

    assertThat(analyse(second, first)).isEqualTo("2026-10-08");

    assertThat(files()).isEqualTo(names).containsExactly("2026-10-08.html", "2026-10-08.json");
    assertThat(out.resolve("2026-10-08.json")).hasBinaryContent(json);
    assertThat(out.resolve("2026-10-08.html")).hasBinaryContent(html);
  }

  @Test
  void aResultOfFewerInputsIsReplaced() throws Exception {
    analyse(first);

    assertThat(analyse(first, second)).isEqualTo("2026-10-08");
    assertThat(inputs("2026-10-08")).containsExactly("first", "second");
  }

  @Test
  void aResultWithOtherInputsStays() throws Exception {
    analyse(first, second);

    String stem = analyse(first);
    assertThat(stem).matches("2026-10-08-[0-9a-f]{8}");
    assertThat(inputs("2026-10-08")).containsExactly("first", "second");
    assertThat(inputs(stem)).containsExactly("first");
    assertThat(analyse(first)).isEqualTo(stem);
    assertThat(files()).hasSize(4);
  }

  @Test
  void aResultUnderTheSuffixIsKeptTooUnlessItsInputsAreThere() throws Exception {
    analyse(third);
    String both = analyse(first, second);

    String alone = analyse(first);

    assertThat(both).matches("2026-10-08-[0-9a-f]{8}");
    assertThat(alone).matches("2026-10-08-[0-9a-f]{16}");
    assertThat(inputs("2026-10-08")).containsExactly("third");
    assertThat(inputs(both)).containsExactly("first", "second");
    assertThat(inputs(alone)).containsExactly("first");
    assertThat(analyse(first, second)).isEqualTo(both);
  }

  @Test
  void whatIsNoResultIsNeverOverwritten() throws Exception {
    Files.createDirectories(out);
    for (String mine : List.of("", "{}", "not JSON", "{\"schema\": \"roundstar.night/1\"}")) {
      Files.writeString(out.resolve("2026-10-08.json"), mine);

      assertThat(analyse(first)).matches("2026-10-08-[0-9a-f]{8}");

      assertThat(out.resolve("2026-10-08.json")).hasContent(mine);
    }
    Files.delete(out.resolve("2026-10-08.json"));
    Files.writeString(out.resolve("2026-10-08.html"), "my own page");
    assertThat(analyse(first)).matches("2026-10-08-[0-9a-f]{8}");
    assertThat(out.resolve("2026-10-08.html")).hasContent("my own page");
  }

  @Test
  void whereEveryNameIsTakenItSaysSo() throws Exception {
    for (int digits : new int[] {0, 8, 16, 32, 64}) {
      String stem = analyse(first);
      assertThat(stem).hasSize("2026-10-08".length() + (digits == 0 ? 0 : 1 + digits));
      Files.writeString(out.resolve(stem + ".json"), "mine");
    }
    List<String> names = files();

    assertThatThrownBy(() -> analyse(first))
        .isInstanceOf(UnwritableOutputException.class)
        .hasMessageMatching("\\S+2026-10-08\\.json: cannot be written \\(.+\\): name another .+");

    assertThat(files()).isEqualTo(names);
  }

  @Test
  void ofFilesThatBelongTogetherNoneIsWrittenIfOneCannotBe() throws Exception {
    Path good = folder.resolve("good.txt");
    Files.writeString(good, "earlier");
    Path hindered = Files.createDirectory(folder.resolve("hindered.txt"));

    assertThatThrownBy(
            () ->
                FileInPlace.write(
                    new TreeMap<>(Map.of(good, "new".getBytes(UTF_8), hindered, new byte[0]))))
        .isInstanceOf(UnwritableOutputException.class)
        .hasMessageStartingWith(hindered + ": cannot be written (it is a folder): ");

    assertThat(good).hasContent("earlier");
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(Path::toString)).noneMatch(name -> name.endsWith(".part"));
    }
  }

  @Test
  void twoLogsOfOneNightThatOverlapGiveTwoNights() throws Exception {
    Path other = log("other.ecsv", 9, "20:00");
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                List.of(first.toString(), other.toString()),
                Optional.empty(),
                Optional.empty(),
                out,
                Optional.empty(),
                true,
                "test"));

    assertThat(outcome.warnings()).hasSize(1);
    assertThat(outcome.nights()).hasSize(2);
    assertThat(files()).hasSize(5);
    assertThat(files().get(0)).matches("2026-10-08-[0-9a-f]{8}\\.html");
  }
}
