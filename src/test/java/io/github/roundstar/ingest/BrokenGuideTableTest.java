package io.github.roundstar.ingest;

import static io.github.roundstar.ingest.LogFiles.csv;
import static io.github.roundstar.ingest.LogFiles.ecsv;
import static io.github.roundstar.ingest.LogFiles.total;
import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.SourceFile;
import io.github.roundstar.model.UnusableRow;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Bad input either gives one message of the form {@code file:line: what: how to mend it}, or rows
 * that are counted by kind with their line; never another exception.
 */
class BrokenGuideTableTest {
  @TempDir Path folder;
  private LogFiles files;

  @BeforeEach
  void inFolder() {
    files = new LogFiles(folder);
  }

  private void refuses(String text, String message) {
    assertThatThrownBy(() -> files.read(text))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageStartingWith(message)
        .hasMessageMatching("night\\.log(:\\d+)?: [^:]+.*: .+");
  }

  @Test
  void filesWithoutFramesAreRefused() {
    refuses("", "night.log: the file is empty: ");
    refuses("time,ra_offset,dec_offset\n", "night.log:1: no rows below the column names: ");
    refuses(csv("", "0,,", "1,nan,nan"), "night.log: no usable frame in 2 rows (2 lost, ");
    refuses(
        csv("", "x,0,0", "1,y,0"),
        "night.log:2: no usable frame in 2 rows (0 lost, 0 settling, 0 dither, 0 idle, 0 rejected,"
            + " 2 unusable): time: found 'x', expected a number such as 1.84: ");
  }

  @Test
  void filesThatAreNotThereOrNotFilesAreRefused() {
    assertThatThrownBy(() -> GuideTableReader.read(folder.resolve("none.log")))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageStartingWith("none.log: no such file: ");
    assertThatThrownBy(() -> GuideTableReader.read(folder))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining(": the file cannot be read: ");
  }

  @Test
  void columnFaultsNameTheNearestColumn() {
    refuses(
        "time,ra_ofset,dec_offset\n0,0,0\n",
        "night.log:1: unknown column 'ra_ofset', the nearest known one is ra_offset: ");
    refuses("time,ra_offset\n0,0\n", "night.log:1: no column dec_offset: ");
    refuses("ra_offset,dec_offset\n0,0\n", "night.log:1: no column time or utc: ");
    refuses(
        "time;ra_offset;dec_offset\n0;0;0\n",
        "night.log:1: the column names are not separated by commas: ");
    refuses("time,time,ra_offset,dec_offset\n", "night.log:1: the column time is there twice: ");
  }

  @Test
  void wrongUnitsAreRefused() {
    String good = ecsv("", "0,0,0,1,0,0,");
    refuses(
        good.replace("ra_offset, unit: arcsec", "ra_offset, unit: deg"),
        "night.log:6: column ra_offset: found unit 'deg', expected arcsec or pix: ");
    refuses(
        good.replace("time, unit: s", "time, unit: h"),
        "night.log:5: column time: found unit 'h', expected min or ms or s: ");
    refuses(
        good.replace("ra_pulse, unit: ms", "ra_pulse, unit: arcsec"),
        "night.log:9: column ra_pulse: found unit 'arcsec', expected min or ms or s: ");
    refuses(
        good.replace("name: run,", "name: run, unit: s,"),
        "night.log:8: column run: found unit 's', expected none: ");
    refuses(
        good.replace("ra_offset, unit: arcsec", "ra_offset, unit: pix"),
        "night.log:6: column ra_offset is in pix, but the header has no guide_scale: ");
  }

  @Test
  void columnsThatDisagreeWithTheHeaderAreRefused() {
    refuses(
        ecsv("", "0,0,0,1,0,0,").replace("\ntime,ra_offset", "\nra_offset,time"),
        "night.log:13: found the columns [ra_offset, time, ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          declination: 97            | declination: found '97', expected a number such as 41.5
          declination: north         | declination: found 'north', expected a number such as 41.5
          guide_rate: 0              | guide_rate: found '0', expected a number such as 0.5
          pier_side: left            | pier_side: found 'left', expected one of east, west
          time_mark: [start]         | time_mark: found more than one value, expected one of start, middle, end
          start: 2026-03-14T20:00:00 | start: found '2026-03-14T20:00:00', expected an instant such as 2026-03-14T20:15:00+01:00
          runs: 3                    | runs is not a list
          runs: [{declination: 3}]   | an entry of runs without a whole number run
          'runs: [{run: 1}, {run: 1}]' | run 1 is described twice
          'runs: [{run: 1, start: 2026-03-14T20:00:00Z}]' | run 2 has no start, but other runs have
          """)
  void wrongHeaderValuesAreRefused(String meta, String what) {
    assertThatThrownBy(() -> files.read(ecsv(meta, "0,0,0,1,0,0,", "1,0,0,2,0,0,")))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageMatching("night\\.log(:12)?: .*: .+")
        .hasMessageContaining(what + ": ");
  }

  @Test
  void headerKeysNobodyKnowsAreWarnings() throws Exception {
    GuideLog log =
        files.read(
            ecsv("declinatoin: 3, runs: [{run: 7, gain: 1}], comment: null", "0,0,0,1,0,0,")
                .replace("# meta", "# mta: 1\n# meta"));
    assertThat(log.warnings())
        .containsExactly(
            "night.log:13: unknown key declinatoin, the nearest known one is declination, ignored:"
                + " correct the key or remove it",
            "night.log:13: unknown key comment, the nearest known one is runs, ignored:"
                + " correct the key or remove it",
            "night.log:13: unknown key gain, the nearest known one is gain_ra, ignored:"
                + " correct the key or remove it",
            "night.log:12: unknown header key mta, ignored: put the log's own data below meta, or"
                + " correct the key",
            "night.log:13: the header describes run 7, but no row belongs to it: correct the"
                + " number, or remove the entry");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          2,abc,0,1,,       | text in a number | ra_offset: found 'abc', expected a number such as 1.84
          2,1 5,0,1,,       | text in a number | ra_offset: found '1 5', expected a number such as 1.84
          2,0,0,1,0x10,     | text in a number | ra_pulse: found '0x10', expected a number such as 1.84
          2,0,0,one,,       | text in a number | run: found 'one', expected a number such as 1.84
          2,0,0,1.5,,       | run is not a whole number | run: found 1.5
          ,0,0,1,,          | no time | the row has no time
          nan,0,0,1,,       | no time | the row has no time
          inf,0,0,1,,       | number not finite | time: found Infinity, expected at most 1000000000 either way
          2,0,0,1,inf,      | number not finite | ra_pulse: found Infinity, expected at most 10000000 either way
          1e300,0,0,1,,     | number out of range | time: found 1.0E300, expected at most 1000000000 either way
          2,1e9,0,1,,       | number out of range | ra_offset: found 1.0E9, expected at most 648000 either way
          2,0,0,1,,setling  | unknown event | event: found 'setling', the nearest known one is settling
          2,0,0             | row cut short | found 3 fields, expected 6
          2,0,0,1,,,,       | too many fields | found 8 fields, expected 6
          2,0,0,1,,"note: x | quote not closed | quote that is not closed
          0.5,0,0,1,,       | time runs backwards | 0.500 s before the last good row
          1,0.5,0,1,,       | same time, other values | same time as line 3, but other values
          """)
  void badRowsAreCountedByKindWithTheirLine(String row, String kind, String what) throws Exception {
    GuideLog log =
        files.read(csv(",run,ra_pulse,event", "0,0,0,1,,", "1,0,0,1,,", row, "9,0,0,1,,"));
    assertThat(log.source().unusableByReason()).containsOnlyKeys(kind);
    assertThat(log.source().firstUnusable()).hasSize(1);
    UnusableRow unusable = log.source().firstUnusable().get(0);
    assertThat(unusable.line()).isEqualTo(4);
    assertThat(unusable.reason()).startsWith(what + ": ");
    assertThat(total(log).used()).isEqualTo(3);
    assertThat(total(log).unusable()).isEqualTo(1);
    assertThat(total(log).rows()).isEqualTo(log.source().rows()).isEqualTo(4);
  }

  @Test
  void textInTheUtcColumnIsCounted() throws Exception {
    GuideLog log =
        files.read("utc,ra_offset,dec_offset\n2026-03-14T20:00:00Z,0,0\ntonight,0,0\n,0,0\n");
    assertThat(log.source().unusableByReason()).containsOnlyKeys("text in a time", "no time");
  }

  @Test
  void nulBytesAndOtherEncodingsCostTheirRowOnly() throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes(csv(",event", "0,0,0,", "1,0,0,note: clear").getBytes(UTF_8));
    bytes.writeBytes(new byte[] {'2', ',', '0', ',', '0', ',', (byte) 0xE4, '\n'});
    bytes.writeBytes("3,0,0,\n".getBytes(UTF_8));
    bytes.writeBytes(new byte[200_000]);
    GuideLog log = GuideTableReader.read(files.write("night.log", bytes.toByteArray()));
    assertThat(total(log).used()).isEqualTo(3);
    assertThat(log.source().unusableByReason()).containsOnlyKeys("NUL byte", "wrong encoding");
    assertThat(log.source().firstUnusable()).extracting(UnusableRow::line).containsExactly(4L, 6L);
  }

  @Test
  void aFileInUtf16WithoutItsMarkIsRefused() throws Exception {
    Path path = files.write("night.log", csv("", "0,0,0").getBytes(UTF_16BE));
    assertThatThrownBy(() -> GuideTableReader.read(path))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageStartingWith("night.log:1: ");
  }

  @Test
  void aRowCutShortByAPowerFailureIsCounted() throws Exception {
    GuideLog log = files.read("time,ra_offset,dec_offset\n0,0,0\n1,0,0\n2,0.1");
    assertThat(log.source().unusableByReason()).containsEntry("row cut short", 1);
    assertThat(log.source().firstUnusable().get(0).line()).isEqualTo(4);
  }

  @Test
  void rowsBeforeADamageOfTheGzipAreUsed() throws Exception {
    StringBuilder text = new StringBuilder("time,ra_offset,dec_offset\n");
    Random random = new Random(2);
    for (int i = 0; i < 20_000; i++) {
      text.append(i).append(',').append(random.nextFloat()).append(",0\n");
    }
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
      out.write(text.toString().getBytes(UTF_8));
    }
    byte[] cut = Arrays.copyOf(packed.toByteArray(), packed.size() / 2);
    GuideLog log = GuideTableReader.read(files.write("night.log.gz", cut));
    assertThat(total(log).used()).isBetween(5_000, 15_000);
    assertThat(log.warnings()).hasSize(1);
    assertThat(log.warnings().get(0)).contains("the gzip data end too early");
    assertThat(log.source().bytes()).isEqualTo(cut.length);
  }

  @Test
  void identicalRowsAreDuplicatesWhereverTheyStand() throws Exception {
    GuideLog log =
        files.read(csv("", "0,0,0", "1,0.5,0", "1,0.50,-0", "2,0,0", "0,0,0", "1,0.5,0", "3,0,0"));
    assertThat(total(log).duplicate()).isEqualTo(3);
    assertThat(total(log).used()).isEqualTo(4);
    assertThat(total(log).unusable()).isZero();
    assertThat(log.warnings()).isEmpty();
  }

  @Test
  void aClockSetBackCostsRowsUntilItCatchesUp() throws Exception {
    GuideLog log =
        files.read(
            csv("", "100,0,0", "200,0,0", "50,0,0", "120,1,1", "190,0,0", "201,0,0", "300,0,0"));
    assertThat(total(log).used()).isEqualTo(4);
    assertThat(log.source().unusableByReason()).containsEntry("time runs backwards", 3);
    assertThat(log.warnings())
        .containsExactly(
            "night.log:4: the time steps back by 150.000 s, and 3 rows cannot be used until it has"
                + " caught up: correct the times, or give the later part a run and start of its"
                + " own");
  }

  @Test
  void onlyTheFirstThousandAreKeptButAllAreCounted() throws Exception {
    String text = csv("", "0,0,0") + "x,0,0\n".repeat(2500);
    SourceFile source = files.read(text).source();
    assertThat(source.firstUnusable()).hasSize(1000);
    assertThat(source.unusable()).isEqualTo(2500);
    assertThat(source.rows()).isEqualTo(2501);
  }

  @Test
  void warningsAreBounded() throws Exception {
    StringBuilder text = new StringBuilder(csv("", "0,0,0"));
    for (int i = 1; i < 500; i++) {
      text.append(i).append(",0,0\n").append(i - 0.5).append(",0,0\n");
    }
    GuideLog log = files.read(text.toString());
    assertThat(log.warnings()).hasSize(4);
    assertThat(log.warnings().get(3))
        .startsWith("night.log: and 496 more, the last in line 1000: the time steps back by ");
  }

  @ParameterizedTest
  @EnumSource
  void everyKindOfUnusableRowTellsHowToMendIt(RowProblem problem) {
    assertThat(problem.kind()).isNotBlank().hasSizeLessThan(30);
    assertThat(problem.remedy()).isNotBlank().doesNotEndWith(".");
  }

  @Test
  void everyKindOfUnusableRowHasItsOwnName() {
    assertThat(Arrays.stream(RowProblem.values()).map(RowProblem::kind)).doesNotHaveDuplicates();
  }
}
