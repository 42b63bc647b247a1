package io.github.roundstar.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Times read as people say them; number and unit never part at a line's end. */
class TimesTest {
  @ParameterizedTest
  @CsvSource({
    "479.1, 7 min 59 s (479.1 s)",
    "480, 8 min (480.0 s)",
    "42.26, 42.3 s",
    "3780, 1 h 3 min (3780.0 s)"
  })
  void periodsGiveMinutesAndSeconds(double seconds, String shown) {
    assertThat(spaced(Times.period(seconds))).isEqualTo(shown);
  }

  @ParameterizedTest
  @CsvSource({"5, 5.0 s", "59.7, 1 min", "119.6, 2 min", "3599.6, 1 h", "7200, 2 h"})
  void roundingNeverGivesSixtySeconds(double seconds, String shown) {
    assertThat(spaced(Times.shortPeriod(seconds))).isEqualTo(shown);
  }

  @Test
  void intervalsDurationsAndSharesStayInOneLine() {
    assertThat(Times.unbroken("it takes 7 min 59 s and 67 % (\u22126 .. 2) of the rest"))
        .isEqualTo(
            "it takes 7\u00a0min\u00a059\u00a0s and 67\u00a0% (\u22126\u00a0..\u00a02) of the rest");
  }

  @Test
  void clockIsUtc() {
    assertThat(Times.clock(Instant.parse("2026-03-14T21:04:59Z"))).isEqualTo("21:04");
  }

  private static String spaced(String text) {
    return text.replace('\u00a0', ' ');
  }

  @Test
  void aDurationInAHeadingStaysOnOneLine() {
    assertThat(Times.unbroken("a swing every 7 min 59 s gets through"))
        .isEqualTo("a swing every 7\u00a0min\u00a059\u00a0s gets through");
    assertThat(Times.unbroken("10 arcsec")).isEqualTo("10 arcsec");
  }
}
