package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The line's slope error counts only samples that bring news. */
class LineTrendTest {
  /** Formulas of Santer et al. 2000 applied in NumPy to the line plus autoregression. */
  @Test
  @Tag("published")
  void effectiveSamplesWidenTheSlopeError() {
    double[] seconds = new double[200];
    double[] values = KnownSeries.autoregression();
    for (int i = 0; i < 200; i++) {
      seconds[i] = 2.0 * i;
      values[i] += 0.01 * seconds[i];
    }
    LineTrend trend = LineTrend.of(Series.of(seconds, values)).orElseThrow();
    assertThat(trend.slopePerSecond()).isCloseTo(0.01246231950294246, within(1e-14));
    assertThat(trend.valueAtZero()).isCloseTo(-0.5977864886755757, within(1e-12));
    assertThat(trend.effectiveCount()).isCloseTo(52.34666872778907, within(1e-9));
    assertThat(trend.slopeStandardError()).isCloseTo(0.0015217572764927262, within(1e-14));
    assertThat(trend.slope().covers(0.01)).isTrue();
    // Student's t, 50.35 degrees of freedom: 2.0083 (between the tables' 2.009 at 50, 2.007 at 52)
    assertThat(trend.slope().hi95() - trend.slopePerSecond())
        .isCloseTo(2.008 * trend.slopeStandardError(), within(2e-6));
  }

  @Test
  void alternatingResidualsDoNotCountAsMoreThanTheyAre() {
    double[] seconds = new double[50];
    double[] values = new double[50];
    for (int i = 0; i < 50; i++) {
      seconds[i] = i;
      values[i] = i % 2;
    }
    LineTrend trend = LineTrend.of(Series.of(seconds, values)).orElseThrow();
    assertThat(trend.effectiveCount()).isEqualTo(50);
  }

  @Test
  void twoSamplesHaveNoTrend() {
    assertThat(LineTrend.of(Series.of(new double[] {0, 1}, new double[] {1, 2}))).isEmpty();
  }
}
