package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideCamera;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.LoopSettings;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.AxisRun;
import io.github.roundstar.motion.Gears;
import io.github.roundstar.motion.MotionSeries;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.motion.Reconstruction;
import io.github.roundstar.results.Detectable;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The figure for what would have stood out divides what is found from what is not. */
@Tag("identity")
class VisibilityTest {
  private static final double WORM_SECONDS = 479;
  private static final Gears WORM = new Gears(OptionalDouble.of(WORM_SECONDS), List.of());

  @Test
  void sinusoidWellAboveItIsFoundAndOneWellBelowIsNot() {
    Detectable least = Visibility.of(search(2400, 0, WORM), WORM).value().orElseThrow();

    assertThat(least.periodSeconds()).isEqualTo(WORM_SECONDS);
    assertThat(search(2400, 2 * least.amplitudeArcsecAxis(), WORM).tones()).isNotEmpty();
    assertThat(search(2400, 0.3 * least.amplitudeArcsecAxis(), WORM).tones()).isEmpty();
  }

  @Test
  void withoutWormItIsOneThatTurnsAtLeastThreeTimes() {
    Gears none = new Gears(OptionalDouble.empty(), List.of());

    Detectable least = Visibility.of(search(2400, 0, none), none).value().orElseThrow();

    assertThat(least.periodSeconds()).isBetween(6.0, 2400.0);
  }

  @Test
  void fewerThanThreeTurnsOfTheWormGiveNone() {
    assertThat(Visibility.of(search(400, 0, WORM), WORM).because()).contains("too few turns");
  }

  private static PeriodicError search(int frames, double amplitudeArcsec, Gears gears) {
    Random random = new Random(11);
    FramesBuilder unguided = new FramesBuilder();
    for (int i = 0; i < frames; i++) {
      double turn = 2 * Math.PI * 3 * i / WORM_SECONDS;
      double ra = 0.3 * random.nextGaussian() + amplitudeArcsec * Math.sin(turn);
      unguided.add(3 * i, ra, 0.3 * random.nextGaussian()).pulses(0, 0);
    }
    GuideRun run =
        new GuideRun(
            1,
            Optional.empty(),
            Pointing.UNKNOWN,
            GuideCamera.UNKNOWN,
            LoopSettings.UNKNOWN,
            unguided.build(),
            RowCounts.NONE,
            List.of());
    MotionSeries motion =
        Reconstruction.of(run, Axis.RA, Equipment.UNKNOWN)
            .map(Reconstruction::sky)
            .value()
            .orElseThrow();
    AxisRun axisRun = new AxisRun(1, motion, 0, 3, 1, 0);
    return PeriodicError.of(List.of(axisRun), gears).value().orElseThrow();
  }
}
