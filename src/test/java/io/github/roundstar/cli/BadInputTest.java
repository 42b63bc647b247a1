package io.github.roundstar.cli;

import static java.nio.charset.StandardCharsets.UTF_16;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.results.Input;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every bad input gives a message {@code file:line: what: how to mend it} or a counted exclusion in
 * the result; never a stack trace, never half a result.
 */
class BadInputTest {
  private static NightResult clean;

  @TempDir Path folder;

  private Ran analyze(Path... logs) {
    Object[] arguments = new Object[logs.length + 3];
    arguments[0] = "analyze";
    System.arraycopy(logs, 0, arguments, 1, logs.length);
    arguments[logs.length + 1] = "--out";
    arguments[logs.length + 2] = out();
    return Ran.of(arguments);
  }

  private Path out() {
    return folder.resolve("out");
  }

  private Path log(String text) throws IOException {
    return GuideTables.write(folder, "night.log", text);
  }

  private List<String> written() throws IOException {
    if (Files.notExists(out())) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(out())) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @BeforeAll
  static void withoutBadRows(@TempDir Path place) throws IOException {
    Path log = GuideTables.write(place, "night.log", GuideTables.good(1));
    Ran.of("analyze", log, "--out", place.resolve("out")).endsWith(0);
    clean = NightJson.read(Files.readAllBytes(only(place.resolve("out"), ".json")));
  }

  private static Path only(Path folder, String ending) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      List<Path> named = files.filter(file -> file.toString().endsWith(ending)).toList();
      assertThat(named).hasSize(1);
      return named.get(0);
    }
  }

  private NightResult onlyResult() throws IOException {
    List<String> files = written();
    assertThat(files).hasSize(2);
    assertThat(files.get(0)).endsWith(".html");
    assertThat(files.get(1)).isEqualTo(files.get(0).replace(".html", ".json"));
    return NightJson.read(Files.readAllBytes(out().resolve(files.get(1))));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          empty file              | ``                                        | night.log: the file is empty: give
          header only             | time,ra_offset,dec_offset/                | night.log:1: no rows below the column names: give
          unknown column          | time,ra_ofset,dec_offset/0,0,0/           | night.log:1: unknown column 'ra_ofset', the nearest known one is ra_offset: rename
          missing column          | time,ra_offset/0,0/                       | night.log:1: no column dec_offset: add
          missing time            | ra_offset,dec_offset/0,0/                 | night.log:1: no column time or utc: add
          no usable frame         | time,ra_offset,dec_offset/0,x,0/1,0/      | night.log:2: no usable frame in 2 rows
          all lost                | time,ra_offset,dec_offset/0,,/3,nan,nan/  | night.log: no usable frame in 2 rows (2 lost, 0 settling
          all infinite            | time,ra_offset,dec_offset/0,inf,0/3,0,-inf/ | night.log: no usable frame in 2 rows (0 lost, 0 settling, 0 dither, 0 idle, 2 rejected
          other delimiter         | time;ra_offset;dec_offset/0;0;0/          | night.log: no rows of numbers found in its first 2 lines: give
          nothing but text        | Dear diary,/it was a clear night./        | night.log: no rows of numbers found in its first 2 lines: give
          """)
  void aLogThatCannotBeUsedIsNamedAndNothingIsWritten(String name, String text, String message)
      throws IOException {
    Ran ran = analyze(log(text.replace('/', '\n')));

    ran.endsWith(3).saysOnly(message);
    assertThat(ran.out()).isEmpty();
    assertThat(written()).isEmpty();
  }

  @Test
  void aWrongUnitIsNamedWithItsLine() throws IOException {
    String text = GuideTables.header("") + GuideTables.rows(1, 0, 20);

    analyze(log(text.replace("ra_offset, unit: arcsec", "ra_offset, unit: deg")))
        .endsWith(3)
        .saysOnly("night.log:6: column ra_offset: found unit 'deg', expected arcsec or pix: ");
    analyze(log(text.replace("ra_offset, unit: arcsec", "ra_offset, unit: pix")))
        .endsWith(3)
        .saysOnly("night.log:6: column ra_offset is in pix, but the header has no guide_scale: ");
    assertThat(written()).isEmpty();
  }

  @Test
  void aGuideTableInUtf16IsReadAsOne() throws IOException {
    Path log = folder.resolve("night.log");
    Files.write(log, GuideTables.good(1).getBytes(UTF_16));

    analyze(log).endsWith(0);
    assertThat(onlyResult().inputs().get(0).layout()).startsWith("guide-table");
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          180,abc,0,0,0      | text in a number       | ra_offset: found 'abc', expected a number such as 1.84
          `180,"1,84",0,0,0` | text in a number       | ra_offset: found '1,84', expected a number such as 1.84
          180,0,0,inf,0      | number not finite      | ra_pulse: found Infinity
          nan,0,0,0,0        | no time                | the row has no time
          inf,0,0,0,0        | number not finite      | time: found Infinity
          180,0,0,1e99,0     | number out of range    | ra_pulse: found 1.0E99
          180,0,0,1e9,0      | number out of range    | ra_pulse: found 1.0E9
          60,0,0,0,0         | same time, other values | same time as line 22
          100,0,0,0,0        | time runs backwards    | 77.000 s before the last good row
          180,0,0            | row cut short          | found 3 fields, expected 5
          180,0,0,0,0,0      | too many fields        | found 6 fields, expected 5
          180,\u00000,0,0,0  | NUL byte               | NUL byte
          """)
  void aRowThatCannotBeUsedIsCountedWithItsLineAndChangesNoFigure(
      String row, String kind, String reason) throws IOException {
    String bad = row.replace("\\u0000", "\0") + "\n";
    analyze(log(GuideTables.good(1) + bad)).endsWith(0);

    NightResult result = onlyResult();
    Input input = result.inputs().get(0);
    assertThat(input.rows()).isEqualTo(61);
    assertThat(input.unusable().count()).isEqualTo(1);
    assertThat(input.unusable().byReason()).containsOnlyKeys(kind);
    assertThat(input.unusable().first().get(0).line()).isEqualTo(62);
    assertThat(input.unusable().first().get(0).reason())
        .startsWith(reason)
        .matches("(?s).+: [^:]+.*");
    assertThat(result.runs().get(0).counts().unusable()).isEqualTo(1);
    assertThat(result.night().guided()).isEqualTo(clean.night().guided());
    assertThat(result.night().driftArcsecPerMinuteSky())
        .isEqualTo(clean.night().driftArcsecPerMinuteSky());
  }

  @Test
  void aRowInAnotherEncodingIsCounted() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes(GuideTables.good(1).getBytes(UTF_8));
    bytes.writeBytes(new byte[] {'1', '8', '0', ',', (byte) 0xE4, ',', '0', ',', '0', ',', '0'});
    analyze(Files.write(folder.resolve("night.log"), bytes.toByteArray())).endsWith(0);

    assertThat(onlyResult().inputs().get(0).unusable().byReason())
        .containsOnlyKeys("wrong encoding");
  }

  @Test
  void anOffsetThatIsNotFiniteIsExcludedAndCounted() throws IOException {
    analyze(log(GuideTables.good(1) + "180,inf,0,0,0\n183,nan,0,0,0\n186,,0,0,0\n")).endsWith(0);

    NightResult result = onlyResult();
    assertThat(result.runs().get(0).counts().rejected()).isEqualTo(1);
    assertThat(result.runs().get(0).counts().lost()).isEqualTo(2);
    assertThat(result.inputs().get(0).used()).isEqualTo(60);
  }

  @Test
  void identicalRowsAreDroppedAndCounted() throws IOException {
    analyze(log(GuideTables.good(1) + GuideTables.rows(1, 0, 60))).endsWith(0);

    assertThat(onlyResult().runs().get(0).counts().duplicate()).isEqualTo(60);
  }

  @Test
  void aClockSetBackIsSaidAndItsRowsAreCounted() throws IOException {
    Ran ran = analyze(log(GuideTables.good(1) + GuideTables.rows(2, 100.5, 60)));

    ran.endsWith(0).saysOnly("night.log:62: the time steps back by 76.500 s, and 26 rows cannot");
    assertThat(onlyResult().inputs().get(0).unusable().byReason())
        .containsOnlyKeys("time runs backwards")
        .containsValue(26);
  }

  @Test
  void aClockSetAheadIsSaid() throws IOException {
    analyze(log(GuideTables.good(1) + GuideTables.rows(2, 3777, 60)))
        .endsWith(0)
        .saysOnly("night.log:62: the time jumps ahead by 3600 s within a run: correct");
    assertThat(onlyResult().runs()).hasSize(1);
    assertThat(Files.readString(out().resolve(written().get(0))))
        .contains("night.log:62: the time jumps ahead by 3600\u00a0s within a run: correct");
  }

  @Test
  void aClockSetAheadByYearsBeginsANewRunAndAddsNoHours() throws IOException {
    analyze(log(GuideTables.good(1) + GuideTables.rows(2, 9e8, 60)))
        .endsWith(0)
        .saysOnly("night.log:62: the time jumps ahead by 899999823 s, so a new run begins here: ");

    NightResult result = onlyResult();
    assertThat(result.runs()).extracting(RunResult::durationSeconds).containsExactly(177.0, 177.0);
    assertThat(result.night().guidedHours()).isCloseTo(2 * 177 / 3600.0, within(1e-8));
  }

  @Test
  void aRunOfOneFrameHasAResultWithoutDrift() throws IOException {
    analyze(log(GuideTables.NAMES + "0,0.1,0.2,0,0\n")).endsWith(0);

    NightResult result = onlyResult();
    assertThat(result.night().frames()).isEqualTo(1);
    assertThat(result.runs().get(0).cadenceSeconds()).isNull();
    assertThat(result.runs().get(0).driftArcsecPerMinuteSky().ra()).isNull();
  }

  @Test
  void constantOffsetsHaveNoScatterAndNoClaims() throws IOException {
    StringBuilder text = new StringBuilder(GuideTables.NAMES);
    for (int i = 0; i < 500; i++) {
      text.append(3 * i).append(",0.5,-0.25,0,0\n");
    }
    analyze(log(text.toString())).endsWith(0);

    RunResult run = onlyResult().runs().get(0);
    assertThat(run.guided().rmsRadialArcsec()).isZero();
    assertThat(run.guided().ra().meanArcsec()).isEqualTo(0.5);
    assertThat(run.guided().scatterElongation()).isNull();
    assertThat(run.periodic()).isNull();
  }

  @Test
  void aGoodLogBesideABadOneIsStillAnalysed() throws IOException {
    Path good = GuideTables.write(folder, "good.csv", GuideTables.good(1));
    Path bad = GuideTables.write(folder, "bad.csv", "");
    Path gone = folder.resolve("gone.csv");

    Ran ran = analyze(bad, good, gone).endsWith(3);

    assertThat(ran.errLines())
        .containsExactly(
            "bad.csv: the file is empty: give the log as the guider wrote it",
            "gone.csv: no such file: check the path, and that you may read the file");
    assertThat(onlyResult().inputs()).extracting(Input::file).containsExactly("good.csv");
    assertThat(ran.out()).contains("1 run", ".json", ".html");
  }

  @Test
  void namesThatGiveNoLogAreExplained() throws IOException {
    Path empty = Files.createDirectory(folder.resolve("empty"));
    GuideTables.write(empty, "readme.md", "no log");

    analyze(empty).endsWith(3).saysOnly(empty + ": no log file here: ");
    analyze(folder.resolve("x*.csv")).endsWith(3).saysOnly(folder.resolve("x*.csv") + ": no log");
    analyze(folder.resolve("e*/x.csv"))
        .endsWith(3)
        .saysOnly(folder.resolve("e*/x.csv") + ": a pattern in a folder's name: ");
    Ran.of("analyze", "", "--out", out()).endsWith(3).saysOnly("'': an empty name: ");
    Ran.of("analyze", "a\0b", "--out", out()).endsWith(3);
    assertThat(written()).isEmpty();
  }

  @Test
  void foldersAndPatternsGiveTheirLogsByName() throws IOException {
    GuideTables.write(folder, "b.csv", GuideTables.good(1));
    GuideTables.write(folder, "a.log", GuideTables.good(2));
    GuideTables.write(folder, "notes.md", "no log");

    Ran whole = analyze(folder).endsWith(0);
    assertThat(written()).hasSize(5);
    Ran pattern = analyze(folder.resolve("{a,b}.*")).endsWith(0);
    assertThat(pattern.out()).isEqualTo(whole.out());
    assertThat(analyze(folder.resolve("b.*")).endsWith(0).out()).contains("1 run");
  }

  @Test
  void aLogMayBeCalledAnything() throws IOException {
    Path odd = Files.createDirectory(folder.resolve("a [1] {b} ?*"));
    Path log = GuideTables.write(odd, "@<b> 'x' & \"y\".csv", GuideTables.good(1));

    analyze(log).endsWith(0);

    assertThat(onlyResult().inputs().get(0).file()).isEqualTo("@<b> 'x' & \"y\".csv");
    String html = Files.readString(out().resolve(written().get(0)));
    assertThat(html).doesNotContain("<b>").contains("@&lt;b&gt;");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          [muont]               | muont: unknown key, the nearest known one is mount
          [mount]/wormteeth = 3 | mount.wormteeth: unknown key, the nearest known one is worm_teeth
          [mount/               | own.toml:1: newline not permitted here
          [mount]/guide_rate = "fast" | mount.guide_rate: found "fast", expected a number such as
          """)
  void aBrokenEquipmentFileIsNamedWithTheNearestKey(String toml, String message)
      throws IOException {
    Path log = log(GuideTables.good(1));
    Path equipment = GuideTables.write(folder, "own.toml", toml.replace('/', '\n'));

    Ran ran = Ran.of("analyze", log, "--equipment", equipment, "--out", out()).endsWith(3);

    assertThat(ran.errLines()).hasSize(1);
    assertThat(ran.err()).matches("own\\.toml:.+: .+\\R").contains(message);
    assertThat(written()).isEmpty();
  }

  @Test
  void anEquipmentFileThatIsNotThereIsNamed() throws IOException {
    Path log = log(GuideTables.good(1));

    Ran.of("analyze", log, "--equipment", folder.resolve("gone.toml"), "--out", out())
        .endsWith(3)
        .saysOnly("gone.toml: no such file: ");
    Ran.of("analyze", log, "--equipment", folder, "--out", out())
        .endsWith(3)
        .saysOnly(folder.getFileName() + ": the file cannot be read: ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          [nihgt]                 | own.toml: nihgt: unknown key, the nearest known one is night:
          [night]/cadence_s = 0   | own.toml: night.cadence_s:
          [night/                 | own.toml:1:
          """)
  void aBrokenScenarioIsNamedAndNothingIsWritten(String toml, String message) throws IOException {
    Path scenario = GuideTables.write(folder, "own.toml", toml.replace('/', '\n'));

    Ran.of("simulate", scenario, "--out", out()).endsWith(3).saysOnly(message.strip());
    Ran.of("simulate", folder.resolve("gone.toml"), "--out", out())
        .endsWith(3)
        .saysOnly("gone.toml: no such file: ");
    Ran.of("simulate", folder, "--out", out()).endsWith(3);
    assertThat(out()).doesNotExist();
  }
}
