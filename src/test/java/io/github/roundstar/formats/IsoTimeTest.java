package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** ISO 8601 dates and times read as java.time reads them, or not at all. */
class IsoTimeTest {
  private static long nanos(String text) {
    byte[] bytes = text.getBytes(US_ASCII);
    return IsoTime.epochNanos(bytes, 0, bytes.length);
  }

  @Tag("identity")
  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-03-14T20:15:30Z",
        "2026-03-14T20:15:30.123456789Z",
        "2026-03-14T20:15:30.5+01:00",
        "2024-02-29T23:59:59.999-11:30",
        "1999-12-31T00:00Z"
      })
  void agreesWithTheLibrary(String text) {
    OffsetDateTime expected = OffsetDateTime.parse(text);
    Instant instant = Instant.ofEpochSecond(0, nanos(text));
    assertThat(instant).isEqualTo(expected.toInstant());
    assertThat(IsoTime.withOffset(text)).hasValue(expected);
  }

  @Test
  void withoutOffsetOnlyAnInstantCanBeMeant() {
    assertThat(nanos("2026-03-14 20:15:30")).isEqualTo(nanos("2026-03-14T20:15:30Z"));
    assertThat(IsoTime.withOffset("2026-03-14T20:15:30")).isEmpty();
  }

  @Test
  void shortOffsetsAreUnderstood() {
    assertThat(IsoTime.withOffset("2026-03-14T20:15:30+01").map(OffsetDateTime::getOffset))
        .hasValue(ZoneOffset.ofHours(1));
    assertThat(IsoTime.withOffset("2026-03-14T20:15:30-0130").map(OffsetDateTime::getOffset))
        .hasValue(ZoneOffset.ofHoursMinutes(-1, -30));
  }

  @Test
  void leapSecondIsTheSecondAfterIt() {
    assertThat(nanos("2016-12-31T23:59:60Z")).isEqualTo(nanos("2017-01-01T00:00:00Z"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "2026-03-14",
        "2026-02-29T00:00:00Z",
        "2026-13-01T00:00:00Z",
        "2026-03-14T24:00:00Z",
        "2026-03-14T20:15:30.Z",
        "2026-03-14T20:15:30Zx",
        "2026-03-14T20:15:30+",
        "2026-03-14T20:15:61Z",
        "20260314T201530Z",
        "9999-01-01T00:00:00Z",
        "yesterday"
      })
  void refusesEverythingElse(String text) {
    assertThat(nanos(text)).isEqualTo(Long.MIN_VALUE);
    assertThat(IsoTime.withOffset(text)).isEmpty();
  }

  @Test
  void offsetsBeyondTheEarthAreRefused() {
    assertThat(IsoTime.withOffset("2026-03-14T20:15:30+18:59")).isEmpty();
  }
}
