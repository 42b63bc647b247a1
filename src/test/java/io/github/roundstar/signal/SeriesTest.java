package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** A series is ascending, finite and out of anybody's reach. */
class SeriesTest {
  @Test
  void keepsItsSamplesWhenTheCallerWritesOn() {
    double[] seconds = {1, 2, 4};
    double[] values = {5, 6, 7};
    Series series = Series.of(seconds, values);
    seconds[0] = 99;
    values[0] = 99;
    series.seconds()[1] = 99;
    series.values()[1] = 99;
    assertThat(series.seconds()).containsExactly(1, 2, 4);
    assertThat(series.values()).containsExactly(5, 6, 7);
    assertThat(series.seconds(2)).isEqualTo(4);
    assertThat(series.value(2)).isEqualTo(7);
    assertThat(series.spanSeconds()).isEqualTo(3);
  }

  @Test
  void mayBeEmpty() {
    assertThat(Series.of(new double[0], new double[0]).spanSeconds()).isZero();
  }

  @Test
  void timesThatDoNotAscendAreRefused() {
    double[] values = {0, 0, 0};
    assertThatThrownBy(() -> Series.of(new double[] {0, 2, 1}, values))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("time [2] = 1.0 s does not follow [1] = 2.0 s");
    assertThatThrownBy(() -> Series.of(new double[] {0, 2, 2}, values))
        .hasMessageContaining("[2] = 2.0 s does not follow");
  }

  @Test
  void whatIsNotFiniteIsRefused() {
    assertThatThrownBy(() -> Series.of(new double[] {0, Double.NaN}, new double[] {0, 0}))
        .hasMessage("time [1] = NaN is not finite");
    assertThatThrownBy(
            () -> Series.of(new double[] {0, 1}, new double[] {Double.NEGATIVE_INFINITY, 0}))
        .hasMessage("value [0] = -Infinity is not finite");
  }

  @Test
  void lengthsMustAgree() {
    assertThatThrownBy(() -> Series.of(new double[] {0, 1}, new double[] {0}))
        .hasMessage("values has 1 of 2");
  }
}
