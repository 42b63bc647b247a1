package io.github.roundstar.ingest;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.groups.Tuple.tuple;

import io.github.roundstar.dialects.Obstacle;
import io.github.roundstar.ingest.ReadingTable.Outcome;
import io.github.roundstar.ingest.ReadingTable.Read;
import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.model.GuideLog;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Logs that hold more, less or other things than frames in one order: invented, all of them. */
@Tag("identity")
class OddTextLogTest {
  private static final String NAMES =
      "time,ra error [arcsec],dec error [arcsec],ra pulse [ms],dec pulse [ms]\n";

  @TempDir Path folder;

  private Path file(String text) throws Exception {
    return Files.writeString(folder.resolve("odd.log"), text);
  }

  /** A frame every three seconds; pulses answer offsets beyond a dead zone. */
  private static String row(int i, String form) {
    double ra = 0.8 * Math.sin(i * 1.7) + 0.3 * Math.cos(i * 0.31);
    double dec = 0.5 * Math.cos(i * 2.3) - 0.2 * Math.sin(i * 0.17);
    long raPulse = Math.abs(ra) < 0.1 ? 0 : Math.round(90 * ra);
    long decPulse = Math.abs(dec) < 0.1 ? 0 : Math.round(140 * dec);
    String time =
        String.format(
            Locale.ROOT, "2026-02-11T%02d:%02d:%02d", 20 + i / 1200, i / 20 % 60, i * 3 % 60);
    return String.format(Locale.ROOT, form, time, ra, dec, raPulse, decPulse);
  }

  private static String rows(int from, int to, String form) {
    StringBuilder text = new StringBuilder();
    for (int i = from; i < to; i++) {
      text.append(row(i, form)).append('\n');
    }
    return text.toString();
  }

  private static final String PLAIN = "%s,%.3f,%.3f,%d,%d";

  private void assertRead(Obstacle obstacle, Outcome wanted) throws Exception {
    List<String> otherwise = new ArrayList<>();
    for (int seed = 1; seed <= 3; seed++) {
      Read read = ReadingTable.read(folder, obstacle.alone(seed));
      if (read.outcome() != wanted) {
        otherwise.add(read.log() + ": " + read.outcome() + " " + read.detail());
      }
    }
    assertThat(otherwise).isEmpty();
  }

  @Test
  void linesOfASecondDeviceAreNoFrames() throws Exception {
    assertRead(Obstacle.SECOND_DEVICE, Outcome.READ);
    assertRead(Obstacle.SECOND_DEVICE_AS_ROWS, Outcome.READ);
  }

  @Test
  void titleBlocksAndTotalsAreNoFrames() throws Exception {
    assertRead(Obstacle.TITLE_BLOCK, Outcome.READ);
    assertRead(Obstacle.TOTALS_AT_END, Outcome.READ);
    assertRead(Obstacle.TOTALS_AS_ROWS, Outcome.READ);
  }

  @Test
  void columnsThatSwapUnderTheirNamesAreFollowed() throws Exception {
    assertRead(Obstacle.COLUMNS_SWAP_HALF_WAY, Outcome.READ);
  }

  @Test
  void columnsThatSwapWithoutAWordStopTheReading() throws Exception {
    String swapped = "%1$s,%3$.3f,%2$.3f,%4$d,%5$d";
    Path log = file(NAMES + rows(0, 400, PLAIN) + rows(400, 800, swapped));

    Inference found = InferredLog.infer(log);

    if (found.isCertain()) {
      assertThatThrownBy(() -> InferredLog.read(log, found))
          .isInstanceOf(UnusableInputException.class)
          .hasMessageContaining("within the run");
    } else {
      assertThat(found.open()).extracting(Decision::about).anyMatch(a -> a.contains("signs"));
    }
  }

  @Test
  void offsetsThatChangeTheirUnitWithoutAWordStopTheReading() throws Exception {
    StringBuilder text = new StringBuilder(NAMES);
    text.append(rows(0, 400, PLAIN));
    for (int i = 400; i < 800; i++) {
      String[] f = row(i, "%s,%.6f,%.6f,%d,%d").split(",");
      double ra = Double.parseDouble(f[1]) / 2.4;
      double dec = Double.parseDouble(f[2]) / 2.4;
      text.append(String.format(Locale.ROOT, "%s,%.3f,%.3f,%s,%s%n", f[0], ra, dec, f[3], f[4]));
    }
    Path log = file(text.toString());

    assertThatThrownBy(() -> LogReader.read(log, Optional.empty()))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("their unit changes within the run");
  }

  @Test
  void placesWithoutASetPointAreOffsetsFromThePlaceAfterEachMoveAndThatIsSaid() throws Exception {
    assertRead(Obstacle.OPEN_SET_POINT, Outcome.READ);

    Path log = Files.write(folder.resolve("places.log"), Obstacle.OPEN_SET_POINT.alone(1).bytes());
    assertThat(InferredLog.infer(log).noted())
        .extracting(Decision::about, Decision::chosen)
        .contains(tuple("set point", "taken as the place right after each move"));
  }

  @Test
  void logCutWithinACharacterLosesItsLastLineOnly() throws Exception {
    byte[] whole = (NAMES + rows(0, 300, PLAIN) + "# Nacht beendet, schön").getBytes(UTF_8);
    int cut = whole.length - 2; // between the two bytes of the umlaut
    Path log = Files.write(folder.resolve("cut.log"), Arrays.copyOf(whole, cut));

    GuideLog read = LogReader.read(log, Optional.empty());

    assertThat(read.source().used()).isEqualTo(300);
    assertThat(read.source().rows()).isBetween(300, 301);
  }

  @Test
  void millionColumnsAreRefusedInASecond() throws Exception {
    Path log = file(("1,".repeat(1_000_000) + "1\n").repeat(4));

    assertThatThrownBy(() -> LogReader.read(log, Optional.empty()))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("odd.log");
  }

  @Test
  void logOfAThermometerIsRefusedInWordsThatSayWhatWasLookedFor() throws Exception {
    StringBuilder text = new StringBuilder("time;temperature [C];humidity [%];dew point [C]\n");
    for (int i = 0; i < 300; i++) {
      text.append(row(i, "%s").replace("T", " "));
      text.append(
          String.format(
              Locale.ROOT,
              ";%.2f;%.1f;%.2f%n",
              9 - 0.004 * i + 0.05 * Math.sin(i),
              60 + 0.02 * i,
              1.5 + 0.03 * Math.cos(0.2 * i)));
    }
    Path log = file(text.toString());

    assertThatThrownBy(() -> LogReader.read(log, Optional.empty()))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("no pair of columns tells the offsets of the star")
        .hasMessageContaining("looked for two columns of numbers of either sign");
  }
}
