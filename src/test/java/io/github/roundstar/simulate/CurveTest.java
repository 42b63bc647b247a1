package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Every curve gives the exact mean over an exposure. */
@Tag("identity")
class CurveTest {
  @Test
  void sinusoidIsAveraged() {
    Curve curve = Curve.sinusoid(3, 20, 0.4);

    assertMeans(curve, t -> 3 * Math.sin(2 * Math.PI * t / 20 + 0.4), 1e-7);
  }

  @Test
  void swingIsAveragedAcrossItsEnds() {
    Curve curve = Curve.swing(5, 4, -2);

    assertMeans(
        curve, t -> t < 5 || t > 9 ? 0 : -2 * Math.pow(Math.sin(Math.PI * (t - 5) / 4), 2), 1e-7);
  }

  @Test
  void stepCountsFromItsMoment() {
    Curve curve = Curve.step(5.25, 1.5);

    assertMeans(curve, t -> t < 5.25 ? 0 : 1.5, 1e-4);
  }

  @Test
  void rampIsItsMiddle() {
    assertThat(Curve.ramp(6).mean(9, 11)).isCloseTo(1, within(1e-15));
  }

  /** Midpoint sums, 20,000 a piece. */
  private static void assertMeans(Curve curve, DoubleUnaryOperator value, double tolerance) {
    int steps = 20_000;
    for (double from = 2; from < 12; from += 1.3) {
      double sum = 0;
      for (int i = 0; i < steps; i++) {
        sum += value.applyAsDouble(from + 2.1 * (i + 0.5) / steps);
      }
      assertThat(curve.mean(from, from + 2.1)).isCloseTo(sum / steps, within(tolerance));
    }
  }
}
