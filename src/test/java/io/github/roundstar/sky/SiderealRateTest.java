package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sky turns at the rate the conventions state, and worms follow it. */
class SiderealRateTest {
  /** ERFA 2.0.0, difference of the Earth rotation angle (era00) over one day. */
  @Test
  @Tag("published")
  void rateIsThatOfTheEarthRotationAngle() {
    assertThat(SiderealRate.ARCSEC_PER_SECOND).isCloseTo(15.0410671787, within(1e-10));
    assertThat(1_296_000 / SiderealRate.ARCSEC_PER_SECOND).isCloseTo(86164.098904, within(1e-6));
  }

  /** ERFA 2.0.0, gmst06 over one day (86164.09053133 s), divided by the number of teeth. */
  @ParameterizedTest(name = "{0} teeth")
  @Tag("published")
  @CsvSource(
      textBlock =
          """
          # teeth, period [s]
          100, 861.640905
          130, 662.800696
          144, 598.361740
          180, 478.689392
          288, 299.180870
          359, 240.011394
          435, 198.078369
          720, 119.672348
          """)
  void wormTurnsOncePerTooth(double teeth, double periodSeconds) {
    assertThat(SiderealRate.wormPeriodSeconds(teeth)).isCloseTo(periodSeconds, within(1e-6));
  }

  @Test
  void wheelWithoutTeethIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SiderealRate.wormPeriodSeconds(0))
        .withMessageContaining("0.0 teeth");
  }
}
