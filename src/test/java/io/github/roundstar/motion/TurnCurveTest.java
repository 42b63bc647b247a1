package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** One turn's extremes and steepest slope are those of the curve looked at closely. */
@Tag("identity")
class TurnCurveTest {
  private static final PeriodicError FOUND =
      PeriodicError.of(
              List.of(PlainNights.WITH_WORM.with(119.75, 0.8, 1).run(1, 2)),
              new Gears(OptionalDouble.of(479), List.of()))
          .value()
          .orElseThrow();

  private static final TurnCurve CURVE = FOUND.curve().value().orElseThrow();

  @Test
  void followsTheTruth() {
    assertThat(CURVE.periodSeconds()).isCloseTo(479, within(1.0));
    for (double angle = 0; angle < 2 * Math.PI; angle += 0.1) {
      double truth =
          6 * Math.sin(angle + 0.7) + Math.sin(2 * angle + 2) + 0.8 * Math.sin(4 * angle + 1);
      assertThat(CURVE.at(angle)).isCloseTo(truth, within(0.4));
    }
  }

  @Test
  void peakToPeakIsFromHighestToLowest() {
    double[] values = new double[100_000];
    Arrays.setAll(values, i -> CURVE.at(2 * Math.PI * i / 1e5));
    double highest = Arrays.stream(values).max().orElseThrow();
    double lowest = Arrays.stream(values).min().orElseThrow();
    assertThat(CURVE.at(CURVE.extremePhase(1))).isCloseTo(highest, within(1e-3));
    assertThat(CURVE.at(CURVE.extremePhase(-1))).isCloseTo(lowest, within(1e-3));
    assertThat(FOUND.peakToPeakArcsecAxis().value().orElseThrow().value())
        .isCloseTo(highest - lowest, within(2e-3));
  }

  @Test
  void steepestSlopeIsThatOfSmallDifferences() {
    double step = 2 * Math.PI / 1e5;
    double steepest = 0;
    for (int i = 0; i < 100_000; i++) {
      steepest = Math.max(steepest, Math.abs(CURVE.at((i + 1) * step) - CURVE.at(i * step)));
    }
    double perSecond = steepest / (step * CURVE.periodSeconds() / (2 * Math.PI));
    assertThat(CURVE.steepestArcsecPerSecond()).isCloseTo(perSecond, within(1e-4 * perSecond));
  }
}
