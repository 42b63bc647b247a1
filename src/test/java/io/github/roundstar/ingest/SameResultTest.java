package io.github.roundstar.ingest;

import static io.github.roundstar.ingest.LogFiles.total;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.RowCounts;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import java.util.TimeZone;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What does not matter does not change the result: packing, line ends, locale, zone, the cut. */
class SameResultTest {
  private final Locale locale = Locale.getDefault();
  private final TimeZone zone = TimeZone.getDefault();
  @TempDir Path folder;
  private LogFiles files;

  @BeforeEach
  void inFolder() {
    files = new LogFiles(folder);
  }

  @AfterEach
  void putBack() {
    Locale.setDefault(locale);
    TimeZone.setDefault(zone);
  }

  /** Rows with dithers, lost frames, duplicates, a clock set back and torn rows. */
  private static String[] rows(int count) {
    Random random = new Random(7);
    String[] rows = new String[count];
    double time = 0;
    for (int i = 0; i < count; i++) {
      time += i % 97 == 96 ? -20 : 2.5;
      String event = i % 50 == 10 ? "dither" : i % 31 == 0 ? "note: Wind ist böig" : "";
      String ra = i % 23 == 5 ? "" : String.format(Locale.ROOT, "%.3f", random.nextGaussian());
      rows[i] =
          String.format(
              Locale.ROOT,
              "%.3f,%s,%.3f,1,%d,%d,%s",
              time,
              ra,
              random.nextGaussian(),
              random.nextInt(200) - 100,
              random.nextInt(200) - 100,
              event);
      if (i % 41 == 3) {
        rows[i] = rows[i].substring(0, 9);
      } else if (i % 59 == 30) {
        rows[i] = rows[i - 1];
      }
    }
    return rows;
  }

  private static final String META = "start: 2026-03-14T20:00:00+01:00, guide_exposure: 2";

  private static String describe(GuideLog log) {
    StringBuilder all = new StringBuilder();
    for (GuideRun run : log.runs()) {
      all.append(run.start()).append(run.pointing()).append(run.counts()).append(run.notes());
      Frames frames = run.frames();
      for (int i = 0; i < frames.size(); i++) {
        all.append(frames.timeSeconds(i)).append(' ').append(frames.raArcsec(i)).append(' ');
        all.append(frames.decPulseMillis(i)).append(frames.state(i)).append('\n');
      }
    }
    return all.append(log.source().unusableByReason())
        .append(log.source().firstUnusable())
        .append(log.warnings())
        .toString();
  }

  @Tag("identity")
  @Test
  void packingAndLineEndsDoNotMatter() throws Exception {
    String text = LogFiles.ecsv(META, rows(600));
    String expected = describe(files.read(text));
    assertThat(describe(files.read(text.replace("\n", "\r\n")))).isEqualTo(expected);
    assertThat(describe(files.read("\uFEFF" + text))).isEqualTo(expected);
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
      out.write(text.getBytes(UTF_8));
    }
    Path path = files.write("night.log", packed.toByteArray());
    assertThat(describe(GuideTableReader.read(path))).isEqualTo(expected);
  }

  @Tag("identity")
  @ParameterizedTest
  @CsvSource({"en, UTC", "de, Europe/Berlin", "tr, Asia/Istanbul", "ar-EG, Pacific/Kiritimati"})
  void localeAndZoneDoNotMatter(String tag, String zoneName) throws Exception {
    String text = LogFiles.ecsv(META + ", pier_side: west, dec_direction: north", rows(300));
    String expected = describe(files.read(text));
    Locale.setDefault(Locale.forLanguageTag(tag));
    TimeZone.setDefault(TimeZone.getTimeZone(zoneName));
    assertThat(describe(files.read(text))).isEqualTo(expected);
  }

  @Tag("identity")
  @Test
  void spaceAndCommaTablesAreTheSame() throws Exception {
    String text = LogFiles.ecsv(META, "0,0.5,,1,5,-6,", "1,0.25,0.5,1,,,note:x", "2,0,0,1,1,1,");
    String spaced =
        LogFiles.ecsv(
                META,
                "0 0.5 \"\" 1 5 -6 \"\"",
                "1 0.25  0.5 1 \"\" \"\" note:x",
                "2 0 0 1 1 1 \"\"")
            .replace("delimiter: ','", "delimiter: ' '")
            .replace(
                "\ntime,ra_offset,dec_offset,run,ra_pulse,dec_pulse,event",
                "\ntime ra_offset dec_offset run ra_pulse dec_pulse event");
    assertThat(describe(files.read(spaced))).isEqualTo(describe(files.read(text)));
  }

  /**
   * Only clean rows: a cut changes what a later row is measured against, not how many there are.
   */
  @Tag("identity")
  @Test
  void aFileCutInTwoHasTheSameRows() throws Exception {
    String[] rows = rows(500);
    RowCounts whole = total(files.read(LogFiles.ecsv(META, rows)));
    for (int cut : new int[] {1, 100, 251, 499}) {
      GuideLog first = files.read(LogFiles.ecsv(META, Arrays.copyOf(rows, cut)));
      GuideLog second = files.read(LogFiles.ecsv(META, Arrays.copyOfRange(rows, cut, 500)));
      RowCounts both = total(Stream.of(first, second));
      assertThat(both.rows()).isEqualTo(whole.rows()).isEqualTo(500);
      assertThat(both.lost()).isGreaterThanOrEqualTo(whole.lost());
      assertThat(first.source().rows() + second.source().rows()).isEqualTo(500);
    }
  }

  /** Seeded damage to a good file: flipped, removed and repeated bytes. */
  @Test
  void damagedBytesNeverGiveAnotherException() throws Exception {
    byte[] good = LogFiles.ecsv(META + ", runs: [{run: 1, gain_ra: 1}]", rows(60)).getBytes(UTF_8);
    Random random = new Random(13);
    for (int trial = 0; trial < 600; trial++) {
      byte[] bad = good.clone();
      for (int flips = random.nextInt(6); flips >= 0; flips--) {
        bad[random.nextInt(bad.length)] = (byte) random.nextInt(256);
      }
      int length = random.nextInt(4) == 0 ? random.nextInt(bad.length) : bad.length;
      Path path = files.write("night.log", Arrays.copyOf(bad, length));
      assertThatCode(
              () -> {
                try {
                  GuideLog log = GuideTableReader.read(path);
                  assertThat(total(log).rows()).isEqualTo(log.source().rows());
                  assertThat(total(log).unusable()).isEqualTo(log.source().unusable());
                } catch (UnusableInputException e) {
                  assertThat(e.getMessage()).matches("(?s)night\\.log(:\\d+)?: .+: .+");
                }
              })
          .as("trial %d", trial)
          .doesNotThrowAnyException();
    }
  }
}
