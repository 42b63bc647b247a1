package io.github.roundstar.ingest.layout.text;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.ingest.layout.TimeForm.DateOrder;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Dates and times in any order of their parts. */
class ClockTextTest {
  /** What {@link DateTimeFormatter} of the JDK writes is read back. */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "YMD|uuuu-MM-dd'T'HH:mm:ss.SSSXXX",
        "YMD|uuuu/MM/dd HH:mm:ss,SSSxx",
        "YMD|uuuuMMdd HH:mm:ss.SSS XXX",
        "DMY|d.M.uuuu HH:mm:ss.SSSXXX",
        "DMY|HH:mm:ss.SSSXXX dd-MM-uu",
        "MDY|MM/dd/uuuu hh:mm:ss.SSS aXXX",
        "MDY|MMM d, uuuu HH:mm:ss.SSSXXX",
        "DMY|dd MMM uuuu HH:mm:ss.SSSXXX"
      })
  void readsWhatTheJdkWrites(DateOrder order, String pattern) {
    DateTimeFormatter formatter = DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH);
    Random random = new Random(3);
    for (int i = 0; i < 200; i++) {
      OffsetDateTime time =
          OffsetDateTime.of(
              LocalDate.ofEpochDay(17_000 + random.nextInt(4000)),
              LocalTime.ofNanoOfDay(random.nextInt(86_400_000) * 1_000_000L),
              ZoneOffset.ofHours(random.nextInt(20) - 10));

      ClockText read = ClockText.of(formatter.format(time), order);

      assertThat(read.date()).contains(time.toLocalDate());
      assertThat(read.time()).contains(time.toLocalTime());
      assertThat(read.offset()).contains(time.getOffset());
    }
  }

  @Test
  void nonsenseHasNoDateAndNoTime() {
    for (String text : new String[] {"", "25:61:00", "2026-02-30", "abc", "-", "9".repeat(70)}) {
      ClockText read = ClockText.of(text, DateOrder.YMD);

      assertThat(read.date()).as(text).isEmpty();
      assertThat(read.time()).as(text).isEmpty();
    }
  }
}
