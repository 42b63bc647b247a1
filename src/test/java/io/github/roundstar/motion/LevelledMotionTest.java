package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Closing unknown steps gives back the motion as it was before they were put in. */
@Tag("identity")
class LevelledMotionTest {
  private static final PlainNights NIGHT = PlainNights.WITH_WORM.noise(0.1);

  @Test
  void stepsAreTakenOut() {
    AxisRun run = NIGHT.run(1, 1);
    double[] stepped = run.motion().arcsec();
    boolean[] starts = run.motion().startsPiece();
    for (int i = 0; i < stepped.length; i++) {
      starts[i] = i == 0 || i == 500 || i == 1711;
      stepped[i] += i < 500 ? 0 : i < 1711 ? 21 : -8;
    }
    LevelledMotion levelled = levelled(NIGHT.run(1, run.motion().seconds(), stepped, starts));
    double start = levelled.arcsec(0) - run.motion().arcsec(0);
    for (int i = 0; i < levelled.size(); i++) {
      // Each step is known to the mean of ten frames on either side and what wanders in between.
      assertThat(levelled.arcsec(i) - run.motion().arcsec(i)).isCloseTo(start, within(0.6));
    }
  }

  @Test
  void partsAddUp() {
    AxisRun run = NIGHT.run(1, 2);
    LevelledMotion levelled = levelled(run);
    PeriodicError found = fit(run);
    double drift = found.fit().parameter(found.fit().layout().drift(0));
    TurnCurve curve = found.curve().value().orElseThrow();
    for (int i = 0; i < levelled.size(); i++) {
      double seconds = run.motion().seconds(i) - run.originSeconds();
      double rise = levelled.driftArcsec(levelled.size() - 1) - levelled.driftArcsec(0);
      assertThat(rise / run.motion().spanSeconds()).isCloseTo(drift, within(1e-9));
      assertThat(levelled.arcsec(i))
          .isCloseTo(
              levelled.driftArcsec(i)
                  + curve.at(2 * Math.PI * seconds / curve.periodSeconds())
                  + levelled.leftArcsec(i),
              within(1e-9));
    }
    assertThat(levelled.run().runId()).isEqualTo(1);
  }

  private static LevelledMotion levelled(AxisRun run) {
    return fit(run).levelled().get(0);
  }

  private static PeriodicError fit(AxisRun run) {
    return PeriodicError.of(List.of(run), new Gears(OptionalDouble.of(479), List.of()))
        .value()
        .orElseThrow();
  }
}
