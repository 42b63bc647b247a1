package io.github.roundstar.ingest;

import static java.nio.charset.StandardCharsets.UTF_16;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.ingest.layout.InventedNight;
import io.github.roundstar.ingest.layout.PlainLog;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.simulate.SimulatedNight;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Logs in another language, of keys and values, and of JSON lines need no layout file. */
class PlainLogTest {
  @TempDir Path folder;

  @ParameterizedTest
  @EnumSource
  void sampleIsTheInventedLog(PlainLog invented) throws Exception {
    Path sample =
        Path.of("sample-logs", "layouts", invented.name().toLowerCase(Locale.ROOT) + ".log");

    assertThat(Files.readAllBytes(sample)).isEqualTo(invented.bytes(InventedNight.play(3, 5)));
    assertThat(LogReader.read(sample, Optional.empty()).runs()).hasSize(2);
  }

  @Tag("identity")
  @ParameterizedTest
  @EnumSource
  void readsAsTheGuideTableOfTheSameNight(PlainLog invented) throws Exception {
    SimulatedNight night = InventedNight.play(5, 40);
    LogFiles files = new LogFiles(folder);
    GuideLog table = GuideTableReader.read(files.write("night.ecsv", InventedNight.table(night)));

    GuideLog log =
        LogReader.read(files.write("night.log", invented.bytes(night)), Optional.empty());

    assertThat(log.source().rows()).isEqualTo(table.source().rows());
    assertThat(log.source().unusable()).isZero();
    assertThat(log.runs()).hasSameSizeAs(table.runs());
    for (int r = 0; r < log.runs().size(); r++) {
      assertThat(log.runs().get(r).counts()).isEqualTo(table.runs().get(r).counts());
      assertThat(log.runs().get(r).pointing().pierSide())
          .isEqualTo(table.runs().get(r).pointing().pierSide());
      Frames ours = log.runs().get(r).frames();
      Frames theirs = table.runs().get(r).frames();
      for (int i = 0; i < ours.size(); i++) {
        if (theirs.measured(i)) {
          assertThat(ours.raArcsec(i)).isCloseTo(theirs.raArcsec(i), within(2e-3));
          assertThat(ours.decArcsec(i)).isCloseTo(theirs.decArcsec(i), within(2e-3));
        }
        assertThat(ours.raPulseMillis(i)).isCloseTo(theirs.raPulseMillis(i), within(0.51));
        assertThat(ours.decPulseMillis(i)).isCloseTo(theirs.decPulseMillis(i), within(0.51));
      }
    }
  }

  /** UTF-16 is how some editors save a text that was changed by hand. */
  @Test
  void guideTableInUtf16IsReadAsGuideTable() throws Exception {
    SimulatedNight night = InventedNight.play(5, 10);
    String table = InventedNight.table(night);
    Path wide = Files.write(folder.resolve("wide.ecsv"), table.getBytes(UTF_16));

    GuideLog log = LogReader.read(wide, Optional.empty());

    assertThat(log.source().layout()).startsWith("guide-table");
    assertThat(log.source().unusable()).isZero();
  }

  @Test
  void logCutWithinACharacterLosesItsLastRowAtMost() throws Exception {
    byte[] whole = PlainLog.MOLE.bytes(InventedNight.play(3, 5));
    ByteArrayOutputStream cut = new ByteArrayOutputStream();
    cut.writeBytes(whole);
    byte[] last = "14.03.2026 23:59:00,000\t0,1\t0,2\t\t\t20\tS\u00fcd".getBytes(UTF_8);
    cut.write(last, 0, last.length - 2);

    GuideLog log =
        LogReader.read(
            new LogFiles(folder).write("night.log", cut.toByteArray()), Optional.empty());

    assertThat(log.source().rows()).isEqualTo(201);
    assertThat(log.source().used()).isBetween(200, 201);
    assertThat(log.runs().get(0).frames().decPulseMillis(2)).isEqualTo(-68);
  }

  @Test
  void logOfAnotherInstrumentIsRefusedByWhatWasLookedFor() throws Exception {
    StringBuilder temperatures = new StringBuilder("time;T inside;T outside\n");
    for (int i = 0; i < 50; i++) {
      temperatures.append(
          String.format(Locale.ROOT, "2026-03-14 20:%02d:00;18.%d;4.%d\n", i, i % 7, i % 5));
    }
    Path file = new LogFiles(folder).write("temps.log", temperatures.toString());

    assertThatThrownBy(() -> LogReader.read(file, Optional.empty()))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("looked for two columns of numbers of either sign");
    assertThat(InferredLog.sketch(file))
        .contains("# column T inside: 18.0 | 18.1", "name = \"T inside\"", "unanswered");
  }

  @Test
  void lineOfAMillionColumnsIsRefused() throws Exception {
    Path file = new LogFiles(folder).write("wide.log", "1.5,".repeat(1_000_000) + "\n");

    assertThatThrownBy(() -> LogReader.read(file, Optional.empty()))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("a line longer than");
  }
}
