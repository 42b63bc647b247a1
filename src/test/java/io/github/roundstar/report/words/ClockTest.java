package io.github.roundstar.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.LocalTime;
import io.github.roundstar.results.LocalTime.Source;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;

/** Local time beside UTC; never that of the machine. */
class ClockTest {
  private static final Instant BEGIN = Instant.parse("2026-10-15T21:04:30Z");
  private static final Instant END = Instant.parse("2026-10-15T23:10:00Z");

  private static Clock clock(int offsetSeconds, Source source) {
    return new Clock(Optional.of(new LocalTime(offsetSeconds, source)));
  }

  @Test
  void theLogsOffsetIsNamedAsSuch() {
    Clock clock = clock(7200, Source.LOG);

    assertThat(clock.span(BEGIN, END))
        .isEqualTo("21:04 to 23:10 UTC, 23:04 to 01:10 local time (log's offset, +02:00)");
    assertThat(clock.both(BEGIN)).isEqualTo("21:04\u00a0(23:04)");
    assertThat(clock.name()).isEqualTo("UTC (local)");
  }

  @Test
  void solarTimeIsNamedAsSuchAndMayLieBehind() {
    assertThat(clock(-16_200, Source.LONGITUDE).span(BEGIN, END))
        .endsWith("16:34 to 18:40 local time (mean solar time by the longitude, \u221204:30)");
  }

  @Test
  void whereNothingIsKnownThereIsUtcAlone() {
    Clock clock = new Clock(Optional.empty());

    assertThat(clock.span(BEGIN, END)).isEqualTo("21:04 to 23:10 UTC");
    assertThat(clock.both(BEGIN)).isEqualTo("21:04");
    assertThat(clock.name()).isEqualTo("UTC");
  }

  /** The outside: java.time's own offsets. */
  @Test
  void localTimesAreThoseOfTheOffsetWhateverTheMachinesZone() {
    TimeZone machine = TimeZone.getDefault();
    try {
      for (String zone : new String[] {"Asia/Tokyo", "America/Denver", "UTC"}) {
        TimeZone.setDefault(TimeZone.getTimeZone(zone));
        LocalDateTime expected = LocalDateTime.ofInstant(BEGIN, ZoneOffset.ofHoursMinutes(5, 30));
        assertThat(clock(19_800, Source.LOG).local(BEGIN))
            .isEqualTo(expected.toLocalTime().toString().substring(0, 5));
      }
    } finally {
      TimeZone.setDefault(machine);
    }
  }

  /** A quarter of an hour is 3.75 degrees of longitude, some 280 km at 47 degrees. */
  @Test
  void solarTimeIsRoundedSoThatItDoesNotTellTheLongitude() {
    assertThat(new LocalTime(2784, Source.LONGITUDE).rounded().offsetSeconds()).isEqualTo(2700);
    assertThat(new LocalTime(-2784, Source.LONGITUDE).rounded().offsetSeconds()).isEqualTo(-2700);
    assertThat(new LocalTime(19_800, Source.LOG).rounded().offsetSeconds()).isEqualTo(19_800);
  }
}
