package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The standard atmosphere's pressures. */
class StandardAirTest {
  /**
   * ISO 2533:1975 by geometric height; the same table stands in the U.S. Standard Atmosphere 1976.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({"0, 1013.25", "1000, 898.763", "2000, 795.014", "3000, 701.211"})
  void pressureFallsWithHeight(double metres, double hectopascal) {
    assertThat(StandardAir.hectopascal(metres)).isCloseTo(hectopascal, within(0.001));
  }
}
