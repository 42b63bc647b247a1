package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The meridian follows the clock. */
class SiderealTimeTest {
  /** ERFA 2.0.0, gmst06. The formula is the older one of 1982, 2e-5 degrees apart. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "2000-01-01T12:00:00Z, 280.460622",
    "2021-08-15T02:00:00Z, 353.707189",
    "2024-03-10T21:15:30.500Z, 127.912424",
    "2024-03-10T21:18:00.500Z, 128.539135"
  })
  void greenwichTimeAgreesWithTheStandardRoutine(Instant instant, double degrees) {
    assertThat(SiderealTime.greenwichDegrees(instant)).isCloseTo(degrees, within(2e-5));
  }

  /**
   * Greenwich mean sidereal time by the formula of 1982 (ERFA 2.0.0, gmst82), 127.912438 degrees,
   * plus 9.25 degrees of longitude, less 8.5 h.
   */
  @Test
  @Tag("published")
  void hourAngleIsSiderealTimeLessRightAscension() {
    Instant instant = Instant.parse("2024-03-10T21:15:30.500Z");

    assertThat(SiderealTime.hourAngleHours(instant, 9.25, 8.5) * 15)
        .isCloseTo(9.662438, within(2e-6));
  }

  @Test
  @Tag("identity")
  void hourAngleStaysWithinHalfADay() {
    Instant instant = Instant.parse("2024-03-10T21:15:30.500Z");

    assertThat(SiderealTime.hourAngleHours(instant, 9.25, 21.2))
        .isCloseTo(-12.0558 + 24, within(1e-4));
  }
}
