package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A grid holds both its ends, and what is refined on it stays between them. */
class FrequencyGridTest {
  @Test
  void gridEndsAtItsLastFrequency() {
    FrequencyGrid grid = FrequencyGrid.between(2, 5, 4);
    assertThat(grid).isEqualTo(new FrequencyGrid(2, 1, 4));
    assertThat(grid.hertz(3)).isEqualTo(5);
  }

  /** The sinusoid is at 1/97 Hz: what the grid leaves of the peak is at its edge. */
  @Test
  @Tag("identity")
  void refinementStaysOnTheGrid() {
    Series series = KnownSeries.unevenlySampled();
    FrequencyGrid below = FrequencyGrid.between(0.0095, 0.0102, 15);
    Periodogram rising = Periodogram.of(series, below);
    assertThat(rising.highest(0, rising.size())).isEqualTo(14);
    assertThat(rising.peak().frequencyHz()).isCloseTo(0.0102, within(1e-9));
    Periodogram falling = Periodogram.of(series, FrequencyGrid.between(0.0104, 0.0111, 15));
    assertThat(falling.highest(0, falling.size())).isZero();
    assertThat(falling.peak().frequencyHz()).isCloseTo(0.0104, within(1e-9));
    Periodogram single = Periodogram.of(series, new FrequencyGrid(1 / 97.0, 1e-4, 1));
    assertThat(single.peak()).isEqualTo(single.direct(1 / 97.0));
    assertThat(single.peak().power()).isCloseTo(0.876065059263, within(6e-13));
  }

  @Test
  void whatIsNoGridIsRefused() {
    assertThatThrownBy(() -> new FrequencyGrid(0, 1, 0)).hasMessageContaining("at least 1");
    assertThatThrownBy(() -> new FrequencyGrid(Double.POSITIVE_INFINITY, 1, 5))
        .hasMessageContaining("start Infinity Hz");
    assertThatThrownBy(() -> new FrequencyGrid(0, 0, 5)).hasMessageContaining("step is 0.0");
    assertThatThrownBy(() -> new FrequencyGrid(-1, 1, 5)).hasMessageContaining("start -1.0 Hz");
    assertThatThrownBy(() -> FrequencyGrid.between(1, 2, 1)).hasMessageContaining("at least 2");
  }
}
