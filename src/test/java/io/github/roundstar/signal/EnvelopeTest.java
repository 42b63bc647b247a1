package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Each column tells its lowest, middle and highest value; nothing is drawn where nothing was. */
class EnvelopeTest {
  @Test
  void columnsHoldLowestMiddleAndHighest() {
    double[] x = {0, 1, 2, 2.4, 7.6, 10};
    double[] y = {3, -1, 8, 4, 5, 6};
    Envelope envelope = Envelope.of(x, y, 4);
    assertThat(envelope.columns()).isEqualTo(2);
    assertThat(envelope.x(0)).isEqualTo(1.25);
    assertThat(envelope.min(0)).isEqualTo(-1);
    assertThat(envelope.median(0)).isEqualTo(3.5);
    assertThat(envelope.max(0)).isEqualTo(8);
    assertThat(envelope.x(1)).isEqualTo(8.75);
    assertThat(envelope.min(1)).isEqualTo(5);
    assertThat(envelope.median(1)).isEqualTo(5.5);
    assertThat(envelope.max(1)).isEqualTo(6);
  }

  /** A shift of all positions shifts the columns' middles and nothing else. */
  @Test
  @Tag("identity")
  void columnsCountFromTheFirstPosition() {
    double[] x = {0, 1, 2, 2.4, 2.5, 7.6, 10};
    double[] y = {3, -1, 8, 4, 7, 5, 6};
    double[] moved = Arrays.stream(x).map(v -> v - 1000).toArray();
    Envelope here = Envelope.of(x, y, 4);
    Envelope there = Envelope.of(moved, y, 4);
    assertThat(here.columns()).isEqualTo(3);
    assertThat(there.columns()).isEqualTo(3);
    for (int i = 0; i < 3; i++) {
      assertThat(there.x(i)).isCloseTo(here.x(i) - 1000, within(1e-9));
      assertThat(there.min(i)).isEqualTo(here.min(i));
      assertThat(there.median(i)).isEqualTo(here.median(i));
      assertThat(there.max(i)).isEqualTo(here.max(i));
    }
    // 2.5 is where the second column begins.
    assertThat(here.x(1)).isEqualTo(3.75);
    assertThat(here.max(1)).isEqualTo(7);
  }

  @Test
  void onePlaceIsOneColumnAndNothingIsNone() {
    Envelope point = Envelope.of(new double[] {4, 4}, new double[] {1, 2}, 100);
    assertThat(point.columns()).isEqualTo(1);
    assertThat(point.median(0)).isEqualTo(1.5);
    assertThat(Envelope.of(new double[0], new double[0], 10).columns()).isZero();
  }

  @Test
  void disorderIsRefused() {
    assertThatThrownBy(() -> Envelope.of(new double[] {1, 0}, new double[2], 3))
        .hasMessage("x [1] = 0.0 is below [0] = 1.0");
    assertThatThrownBy(() -> Envelope.of(new double[] {1}, new double[] {Double.NaN}, 3))
        .hasMessageContaining("y [0] = NaN");
    assertThatThrownBy(() -> Envelope.of(new double[] {Double.NaN}, new double[1], 3))
        .hasMessageContaining("x [0] = NaN");
    assertThatThrownBy(() -> Envelope.of(new double[2], new double[1], 3))
        .hasMessage("y has 1 of 2");
    assertThatThrownBy(() -> Envelope.of(new double[] {1}, new double[1], 0))
        .hasMessageContaining("columns is 0");
  }
}
