package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** An even grid holds the straight lines between the samples. */
class EvenResamplingTest {
  @Test
  void samplesOnTheGridStayAndGapsAreBridged() {
    Series even =
        EvenResampling.of(Series.of(new double[] {10, 12, 13, 18}, new double[] {0, 4, 5, -5}), 2);
    assertThat(even.seconds()).containsExactly(10, 12, 14, 16, 18);
    assertThat(even.values()).containsExactly(new double[] {0, 4, 3, -1, -5}, within(1e-14));
  }

  @Test
  void endsAtTheLastGridTimeWithinTheSeries() {
    Series series = Series.of(new double[] {0, 1}, new double[] {0, 1});
    assertThat(EvenResampling.of(series, 0.4).seconds()).containsExactly(0, 0.4, 0.8);
    assertThat(EvenResampling.of(series, 0.1).size()).isEqualTo(11);
    assertThat(EvenResampling.of(series, 7).values()).containsExactly(0);
  }

  @Test
  @Tag("identity")
  void aLineStaysALine() {
    double[] seconds = new double[50];
    double[] values = new double[50];
    for (int i = 0; i < 50; i++) {
      seconds[i] = 5 + i + 0.4 * Math.sin(i);
      values[i] = 3 - 2 * seconds[i];
    }
    Series even = EvenResampling.of(Series.of(seconds, values), 0.37);
    for (int i = 0; i < even.size(); i++) {
      assertThat(even.value(i)).isCloseTo(3 - 2 * even.seconds(i), within(1e-12));
    }
  }

  @Test
  void absurdStepsAreRefused() {
    Series series = Series.of(new double[] {0, 1e6}, new double[2]);
    assertThatThrownBy(() -> EvenResampling.of(series, 1e-6)).hasMessageContaining("1.0E-6 s");
    assertThatThrownBy(() -> EvenResampling.of(series, 0)).hasMessageContaining("positive");
    Series nothing = Series.of(new double[0], new double[0]);
    assertThatThrownBy(() -> EvenResampling.of(nothing, 1)).hasMessageContaining("at least 1");
  }
}
