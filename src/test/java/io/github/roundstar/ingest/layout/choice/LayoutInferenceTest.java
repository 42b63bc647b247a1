package io.github.roundstar.ingest.layout.choice;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.layout.CameraAxes;
import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Decision.Sureness;
import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.ingest.layout.InventedLog;
import io.github.roundstar.ingest.layout.InventedNight;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.ingest.layout.LayoutText;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.PlainLog;
import io.github.roundstar.simulate.SimulatedNight;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What a log's text tells is found and right; what it does not tell is asked. Of simulated nights
 * the truth is known.
 */
@Tag("identity")
class LayoutInferenceTest {
  private static SimulatedNight night;

  @TempDir Path folder;

  @BeforeAll
  static void play() throws Exception {
    night = InventedNight.play(5, 40);
  }

  private Inference infer(byte[] log) throws Exception {
    return LayoutInference.of(Files.write(folder.resolve("night.log"), log));
  }

  private Inference infer(String log) throws Exception {
    return infer(log.getBytes(UTF_8));
  }

  private static Optional<ColumnRule> column(Inference inference, Meaning meaning) {
    return inference.layout().columns().stream().filter(c -> c.means() == meaning).findFirst();
  }

  @Test
  void delimiterTimeUnitsSettingsAndColumnsTellWhatComesNext() throws Exception {
    Inference mole = infer(PlainLog.MOLE.bytes(night));
    assertThat(mole.isCertain()).isTrue();
    for (String about :
        List.of(
            "delimiter",
            "column Zeitpunkt",
            "utc_offset",
            "date_order",
            "scale",
            "exposure",
            "ra-offset",
            "dec-pulse",
            "column Dauer Rekt [ms]")) {
      assertThat(mole.decisions())
          .filteredOn(decision -> decision.about().equals(about))
          .isNotEmpty()
          .allSatisfy(decision -> assertThat(decision.runnerUp()).isNotBlank())
          .allSatisfy(decision -> assertThat(decision.line()).contains("; runner-up: "));
    }
  }

  /** A line with the exposure's length speaks of each frame, not of the column that counts them. */
  @ParameterizedTest
  @CsvSource({"exposure, Exposure: 2.0 s", "pose, Pose : 2.0 s"})
  void numbersOfFramesAreNotSeconds(String name, String setting) throws Exception {
    String names = "# " + name + ",ra offset arcsec,dec offset arcsec\n";
    StringBuilder rows = new StringBuilder();
    Random random = new Random(20_261_201);
    for (int i = 1; i <= 60; i++) {
      rows.append(i).append(String.format(Locale.ROOT, ",%.2f", random.nextGaussian()));
      rows.append(String.format(Locale.ROOT, ",%.2f%n", random.nextGaussian()));
    }
    String head = "# start: 2026-10-08 20:00:00 UTC\n# " + setting + "\n";
    Inference told = infer(head + "# One exposure every 2.5 seconds, no pause.\n" + names + rows);
    assertThat(told.layout().time().stepSeconds()).hasValue(2.5);
    assertAsks(infer(head + names + rows), "time from frame to frame", "form = \"frames\"");
  }

  @Test
  void runnerUpsAreTheWaysThatNearlyFitToo() throws Exception {
    Inference mole = infer(PlainLog.MOLE.bytes(night));
    assertThat(runnerUp(mole, "delimiter")).startsWith("blanks");
    assertThat(runnerUp(mole, "column Dauer Rekt [ms]")).startsWith("s, ");
    StringBuilder log = new StringBuilder("t_s,millis,ra_err_arcsec,dec_err_arcsec\n");
    Random random = new Random(4);
    for (int i = 0; i < 200; i++) {
      log.append(2 * i + "," + 2000 * i + "," + random.nextInt(99) / 50.0 + ",-0." + i + "\n");
    }
    assertThat(runnerUp(infer(log.toString()), "column t_s")).contains("column millis", "less");
  }

  private static String runnerUp(Inference found, String about) {
    return found.decisions().stream()
        .filter(decision -> decision.about().equals(about))
        .findFirst()
        .orElseThrow()
        .runnerUp();
  }

  /**
   * Words that no dictionary has: the clock tells the runs, the verb of an axis does not matter.
   */
  @Test
  void unknownWordsAreUnderstoodByTheClockAndByTheAxisTheyNameADirectionFor() throws Exception {
    StringBuilder log =
        new StringBuilder("# RA quorls to the west\nt_s,RA off [arcsec],Dec off [arcsec]\n");
    Random random = new Random(9);
    for (int i = 0; i < 200; i++) {
      log.append(i == 0 || i == 120 ? "brindelap\n" : "");
      log.append(i == 60 ? "quenzig\n" : "");
      log.append(3 * i + (i < 120 ? 0 : 900))
          .append(
              String.format(
                  Locale.ROOT, ",%.2f,%.2f\n", random.nextGaussian(), random.nextGaussian()));
    }
    Inference found = infer(log.toString());
    LinePattern begins = found.layout().runs().begins().orElseThrow();
    assertThat(begins.find("brindelap")).isPresent();
    assertThat(begins.find("quenzig")).isEmpty();
    assertThat(column(found, Meaning.RA_OFFSET).orElseThrow().positive()).contains(Direction.WEST);
    assertThat(column(found, Meaning.DEC_OFFSET).orElseThrow().positive())
        .contains(Direction.ONE_WAY);
  }

  /** Whatever is said to be certain is what the layout written by hand says. */
  @ParameterizedTest
  @EnumSource
  void nothingThatIsFoundIsWrong(InventedLog invented) throws Exception {
    Layout truth = LayoutFile.read("a.toml", invented.layout().getBytes(UTF_8));

    Inference found = infer(invented.bytes(night));

    assertThat(found.layout().text().delimiter()).isEqualTo(truth.text().delimiter());
    assertThat(found.layout().text().decimalComma()).isEqualTo(truth.text().decimalComma());
    assertThat(found.layout().text().widths()).isEqualTo(truth.text().widths());
    assertThat(found.layout().time().kind()).isEqualTo(truth.time().kind());
    assertThat(found.layout().pulseInNextRow()).isEqualTo(truth.pulseInNextRow());
    for (ColumnRule column : found.layout().columns()) {
      boolean unnamed =
          column.name().isEmpty()
              && (column.means() == Meaning.X_OFFSET || column.means() == Meaning.Y_OFFSET);
      if (!unnamed) {
        ColumnRule written =
            truth.columns().stream()
                .filter(c -> c.called().equals(column.called()))
                .findFirst()
                .orElseThrow();
        assertThat(column.means()).isEqualTo(written.means());
        column.unit().ifPresent(unit -> assertThat(written.unit()).contains(unit));
        column
            .positive()
            .filter(Direction::isNamed)
            .ifPresent(to -> assertThat(written.positive()).contains(to));
      }
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"CRANE", "BARGE"})
  void logThatTellsAllNeedsNoAnswer(InventedLog invented) throws Exception {
    Inference found = infer(invented.bytes(night));

    assertThat(found.open()).isEmpty();
    assertThat(found.noted()).extracting(Decision::about).isSubsetOf("time mark", "dither sizes");
  }

  /** Negates fields of the rows behind the second line that begins a run. */
  private static String negateSecondRun(String log, int... fields) {
    int second = log.lastIndexOf("## star acquired");
    return log.substring(0, second) + negate(log.substring(second), fields);
  }

  @Test
  void relationThatTurnsWithThePierIsFound() throws Exception {
    Inference found = infer(negateSecondRun(nameless(), 4));

    assertThat(found.open()).isEmpty();
    assertThat(column(found, Meaning.DEC_PULSE).orElseThrow().turnsWithPier()).isTrue();
    assertThat(column(found, Meaning.RA_PULSE).orElseThrow().turnsWithPier()).isFalse();
    assertThat(found.layout().camera().pierSide()).isPresent();
  }

  @Test
  void namedDirectionsThatTurnWithThePierAreAskedAbout() throws Exception {
    assertAsks(infer(negateSecondRun(crane(), 4)), "declination signs", "turns_with_pier = true");
  }

  @Test
  void turnWithoutPierSideIsAskedAbout() throws Exception {
    String log =
        negateSecondRun(nameless(), 4).replace(", tube west", "").replace(", tube east", "");
    int short2 = log.length() - (log.length() - log.lastIndexOf("## star acquired")) * 3 / 4;

    assertAsks(
        infer(log.substring(0, log.lastIndexOf('\n', short2) + 1)),
        "declination signs",
        "means = \"pier-side\"");
  }

  @Test
  void axisThatWasNeverPushedNeedsNoSign() throws Exception {
    StringBuilder log = new StringBuilder();
    for (String line : crane().split("\n")) {
      String[] cells = line.split(";", -1);
      if (cells.length == 7 && Character.isDigit(cells[0].charAt(0))) {
        cells[4] = "0";
      }
      log.append(String.join(";", cells)).append('\n');
    }

    assertThat(infer(log.toString()).open()).isEmpty();
  }

  @Test
  void zeroesThatMayStandForLostStarsAreAskedAbout() throws Exception {
    StringBuilder log = new StringBuilder();
    int row = 0;
    for (String line : crane().split("\n")) {
      boolean lost = line.endsWith(";ok") && ++row % 40 == 0;
      log.append(lost ? line.replaceFirst(";[^;]+;[^;]+;", ";0,000;0,000;") : line).append('\n');
    }

    assertAsks(infer(log.toString()), "frames without a star", "missing = \"0,000\"");
  }

  @Test
  void pulsesInAnUnknownUnitAreAskedAbout() throws Exception {
    assertAsks(
        infer(crane().replace("Push East [ms]", "Push East [steps]")),
        "column Push East [steps]",
        "unit = \"ms\"");
  }

  @Test
  void cameraAnglesFollowFromThePulses() throws Exception {
    CameraAxes barge = infer(InventedLog.BARGE.bytes(night)).layout().camera();
    CameraAxes mill = infer(InventedLog.MILL.bytes(night)).layout().camera();

    assertThat(barge.raDegrees().orElseThrow()).isCloseTo(33, within(0.3));
    assertThat(barge.decDegrees().orElseThrow()).isCloseTo(123, within(0.3));
    assertThat(barge.pierSide()).isPresent();
    assertThat(mill.raDegrees().orElseThrow()).isCloseTo(-160, within(0.3));
    assertThat(mill.decDegrees().orElseThrow()).isCloseTo(110, within(0.3));
  }

  @Test
  void namelessDirectionsStayNameless() throws Exception {
    Inference found = infer(InventedLog.KILN.bytes(night));

    assertThat(column(found, Meaning.RA_OFFSET).orElseThrow().positive())
        .contains(Direction.ONE_WAY);
    assertThat(found.noted())
        .extracting(Decision::about)
        .contains("direction of right ascension", "direction of declination");
  }

  private static String crane() {
    return InventedLog.CRANE.text(night);
  }

  private static void assertAsks(Inference found, String about, String line) {
    assertThat(found.open()).extracting(Decision::about).contains(about);
    assertThat(found.open()).extracting(Decision::ask).anyMatch(ask -> ask.contains(line));
    assertThatThrownBy(() -> LayoutFile.read("a.toml", LayoutText.of(found).getBytes(UTF_8)))
        .isInstanceOf(FormatException.class)
        .hasMessageContaining("unanswered")
        .hasMessageContaining(about);
  }

  @Test
  void droppedUnitIsAskedFor() throws Exception {
    assertAsks(
        infer(
            crane()
                .replace("Star East [arcsec]", "Star East")
                .replace("Star North [arcsec]", "Star North")),
        "column Star East and column Star North",
        "unit = \"arcsec\"   # or \"px\"");
  }

  /** The offsets of one table have one unit. */
  @Test
  void unitDroppedFromOneAxisIsThatOfTheOther() throws Exception {
    Inference found = infer(crane().replace("Star East [arcsec]", "Star East"));

    assertThat(found.open()).isEmpty();
    assertThat(column(found, Meaning.RA_OFFSET).orElseThrow().unit()).contains("arcsec");
  }

  @Test
  void droppedUnitOfPulsesFollowsFromTheirSize() throws Exception {
    Inference found = infer(crane().replace("Push East [ms]", "Push East"));

    assertThat(found.open()).isEmpty();
    assertThat(column(found, Meaning.RA_PULSE).orElseThrow().unit()).contains("ms");
  }

  @ParameterizedTest
  @CsvSource({"Star East [arcsec],Star North [arcsec]", "Push East [ms],Push North [ms]"})
  void swappedColumnNamesAreNoticed(String one, String other) throws Exception {
    String swapped = crane().replace(one, "~").replace(other, one).replace("~", other);

    assertAsks(infer(swapped), "right ascension pulses", "or dec-offset");
  }

  /** Negates fields of all rows. */
  private static String negate(String log, int... fields) {
    StringBuilder text = new StringBuilder();
    for (String line : log.split("\n")) {
      String[] cells = line.split(";", -1);
      if (cells.length == 7 && Character.isDigit(cells[0].charAt(0))) {
        for (int field : fields) {
          String cell = cells[field];
          cells[field] =
              cell.startsWith("-") ? cell.substring(1) : cell.isEmpty() ? "" : "-" + cell;
        }
      }
      text.append(String.join(";", cells)).append('\n');
    }
    return text.toString();
  }

  @Test
  void flippedSignAgainstItsNameIsNoticed() throws Exception {
    assertAsks(infer(negate(crane(), 1)), "right ascension signs", "positive = \"east\"");
  }

  private static String nameless() {
    return crane()
        .replace("Star East", "RA error")
        .replace("Star North", "Dec error")
        .replace("Push East", "RA pulse")
        .replace("Push North", "Dec pulse");
  }

  @Test
  void flippedSignWithoutNameComesOutRight() throws Exception {
    Inference plain = infer(nameless());
    Inference flipped = infer(negate(nameless(), 1));

    assertThat(column(plain, Meaning.RA_PULSE).orElseThrow().positive())
        .contains(Direction.ONE_WAY);
    assertThat(column(flipped, Meaning.RA_PULSE).orElseThrow().positive())
        .contains(Direction.OTHER_WAY);
    assertThat(flipped.open()).isEmpty();
  }

  @Test
  void offsetAndPulseFlippedTogetherGiveTheSameLayout() throws Exception {
    Inference plain = infer(nameless());
    Inference flipped = infer(negate(nameless(), 1, 3));

    assertThat(flipped.layout()).isEqualTo(plain.layout());
    assertThat(flipped.noted()).extracting(Decision::about).contains("direction of declination");
  }

  @Test
  void pulsesInTheNextRowAreNoticedBeforeTheirSign() throws Exception {
    StringBuilder moved = new StringBuilder();
    String[] before = {"0", "0"};
    for (String line : crane().split("\n")) {
      String[] cells = line.split(";", -1);
      if (cells.length == 7 && Character.isDigit(cells[0].charAt(0))) {
        String[] own = {cells[3], cells[4]};
        cells[3] = before[0];
        cells[4] = before[1];
        before = own;
      }
      moved.append(String.join(";", cells)).append('\n');
    }

    Inference found = infer(moved.toString());

    assertThat(found.open()).isEmpty();
    assertThat(found.layout().pulseInNextRow()).isTrue();
    assertThat(column(found, Meaning.RA_OFFSET).orElseThrow().positive()).contains(Direction.EAST);
  }

  @Test
  void missingScaleIsAskedFor() throws Exception {
    String log = InventedLog.BARGE.text(night).replace("pixel size = 2.9 um\n", "");

    assertAsks(infer(log), "scale", "means = \"scale\"");
  }

  @Test
  void datesThatReadBothWaysAreAskedAbout() throws Exception {
    assertAsks(infer(crane().replace("14.03.2026", "04/03/2026")), "date_order", "mdy");
  }

  @Test
  void logWithoutPulsesSaysWhatStaysUnknown() throws Exception {
    StringBuilder text = new StringBuilder("time [s],RA [arcsec],Dec [arcsec]\n");
    Random random = new Random(1);
    for (int i = 0; i < 100; i++) {
      text.append(i * 2).append(',').append(Math.round(random.nextGaussian() * 1000) / 1000.0);
      text.append(',').append(Math.round(random.nextGaussian() * 1000) / 1000.0).append('\n');
    }

    Inference found = infer(text.toString());

    assertThat(found.open()).isEmpty();
    assertThat(found.noted())
        .extracting(Decision::because)
        .anyMatch(t -> t.contains("stays hidden"));
    assertThat(found.decisions()).extracting(Decision::sure).contains(Sureness.NOTED);
  }

  @Test
  void whatIsNoTextLogIsRefusedInOneSentence() throws Exception {
    byte[] photo = new byte[200_000];
    new Random(2).nextBytes(photo);
    ByteArrayOutputStream sheet = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(sheet)) {
      zip.putNextEntry(new ZipEntry("sheet.xml"));
      zip.write(new byte[5000]);
    }

    assertThatThrownBy(() -> infer(photo)).hasMessageContaining("not a text log");
    assertThatThrownBy(() -> infer(sheet.toByteArray()))
        .hasMessageContaining("a packed or office file");
    assertThatThrownBy(() -> infer("x".repeat(10_000_000)))
        .hasMessageContaining("a line longer than 65536 bytes");
    assertThatThrownBy(() -> infer("")).hasMessageContaining("the file is empty");
    assertThatThrownBy(() -> infer("Dear diary,\nthe air was calm.\n"))
        .hasMessageContaining("no rows of numbers");
  }

  /** A hundred million bytes packed into a few: only the beginning is unpacked. */
  @Test
  void gzipBombIsRefused() throws Exception {
    for (byte fill : new byte[] {0, 'a'}) {
      ByteArrayOutputStream packed = new ByteArrayOutputStream();
      try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
        byte[] block = new byte[1 << 20];
        Arrays.fill(block, fill);
        for (int i = 0; i < 100; i++) {
          gzip.write(block);
        }
      }

      assertThatThrownBy(() -> infer(packed.toByteArray())).isInstanceOf(FormatException.class);
    }
  }
}
