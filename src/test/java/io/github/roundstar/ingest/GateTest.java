package io.github.roundstar.ingest;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.model.GuideLog;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A layout that fits the letters of a log, but not what it means, gives no figure. */
class GateTest {
  private static final String LAYOUT =
      """
      [text]
      names = '^t,'
      [time]
      form = "elapsed-s"
      [[column]]
      name = "t"
      means = "time"
      [[column]]
      name = "e"
      means = "ra-offset"
      unit = "arcsec"
      positive = "east"
      [[column]]
      name = "n"
      means = "dec-offset"
      unit = "arcsec"
      positive = "north"
      [[column]]
      name = "pe"
      means = "ra-pulse"
      unit = "ms"
      positive = "east"
      [[column]]
      name = "pn"
      means = "dec-pulse"
      unit = "ms"
      positive = "north"
      """;

  @TempDir Path folder;

  /** Rows whose pulses answer their offsets; every hundredth offset may be something else. */
  private static String rows(int count, String everyHundredth) {
    Random random = new Random(4);
    StringBuilder text = new StringBuilder("t,e,n,pe,pn\n");
    for (int i = 0; i < count; i++) {
      double east = random.nextGaussian() * 0.5;
      double north = random.nextGaussian() * 0.4;
      boolean other = i % 100 == 50 && !everyHundredth.isEmpty();
      text.append(i * 3).append(',');
      text.append(other ? everyHundredth : String.format(Locale.ROOT, "%.3f", east)).append(',');
      text.append(other ? everyHundredth : String.format(Locale.ROOT, "%.3f", north)).append(',');
      text.append(Math.round(east * 200)).append(',').append(Math.round(north * 200)).append('\n');
    }
    return text.toString();
  }

  private GuideLog read(String log, String layout) throws Exception {
    return LogReader.read(
        new LogFiles(folder).write("night.log", log),
        Optional.of(LayoutFile.read("a.toml", layout.getBytes(UTF_8))));
  }

  @Test
  void logThatHangsTogetherPasses() throws Exception {
    GuideLog log = read(rows(400, ""), LAYOUT);

    assertThat(log.source().used()).isEqualTo(400);
    assertThat(log.warnings()).isEmpty();
  }

  @Test
  void someUnreadableRowsAreToldOf() throws Exception {
    GuideLog log = read(rows(400, "dust"), LAYOUT);

    assertThat(log.source().unusable()).isEqualTo(4);
    assertThat(log.warnings())
        .anyMatch(warning -> warning.contains("4 of 400 rows cannot be read (text in a number 4)"));
  }

  @Test
  void manyUnreadableRowsGiveNoFigure() {
    String lettered =
        rows(400, "").replaceAll("(\n[0-9]*[13579],[^\n]*),([0-9-]+)(?=\n)", "$1,$2x");

    assertThatThrownBy(() -> read(lettered, LAYOUT))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("of 400 rows cannot be read");
  }

  @Test
  void numberThatStandsForNoStarIsNoOffset() {
    assertThatThrownBy(() -> read(rows(400, "999.999"), LAYOUT))
        .hasMessageContaining("is 999.999 arcsec in 4 frames")
        .hasMessageContaining("missing =");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "positive = \"east\"|positive = \"west\"|push the star away",
        "elapsed-s|elapsed-min|more than a night can be",
        "elapsed-s|elapsed-ms|faster than a guide camera",
        "unit = \"ms\"|unit = \"s\"|last more than",
      })
  void wrongLayoutGivesNoFigure(String good, String bad, String message) {
    assertThatThrownBy(() -> read(rows(600, ""), LAYOUT.replaceFirst(good, bad)))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageStartingWith("night.log: ")
        .hasMessageContaining(message)
        .hasMessageContaining("roundstar layout night.log");
  }

  @Test
  void exchangedColumnsGiveNoFigure() {
    String exchanged =
        LAYOUT.replace("\"e\"", "\"~\"").replace("\"n\"", "\"e\"").replace("\"~\"", "\"n\"");

    assertThatThrownBy(() -> read(rows(400, ""), exchanged))
        .hasMessageContaining("follow the other axis's offset");
  }

  @Test
  void pulsesOfTheRowBeforeGiveNoFigure() {
    assertThatThrownBy(() -> read(rows(400, ""), LAYOUT + "[pulses]\nrow = \"next\"\n"))
        .hasMessageContaining("follow the offset of the row after");
  }

  /** The second half has its columns exchanged without a word. */
  @Test
  void columnsThatSwapHalfWayGiveNoFigure() {
    String[] lines = rows(400, "").split("\n");
    for (int i = 200; i < lines.length; i++) {
      String[] cells = lines[i].split(",");
      lines[i] = String.join(",", cells[0], cells[2], cells[1], cells[3], cells[4]);
    }

    assertThatThrownBy(() -> read(String.join("\n", lines) + "\n", LAYOUT))
        .hasMessageContaining("follow the other axis");
  }

  @Test
  void namesOnEachPageCutNoRun() throws Exception {
    String log = rows(400, "");
    StringBuilder pages = new StringBuilder();
    int line = 0;
    for (String text : log.split("\n")) {
      pages.append(line > 0 && line % 50 == 0 ? "t,e,n,pe,pn\n" : "").append(text).append('\n');
      line++;
    }

    assertThat(read(pages.toString(), LAYOUT).runs()).hasSize(1);
  }
}
