package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
    assertThatThrownBy(() -> Envelope.of(new double[] {1}, new double[1], 0))
        .hasMessageContaining("columns is 0");
  }
}
