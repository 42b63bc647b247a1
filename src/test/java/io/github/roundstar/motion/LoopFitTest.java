package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.FramesBuilder;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The law that a loop followed is read off its pulses, or the reason is given why it cannot be. */
class LoopFitTest {
  private static final double NONE = Double.POSITIVE_INFINITY;

  /** Wandering offsets and what a law answers, pulses in whole ms. */
  private static FramesBuilder guided(Controller law, int frames) {
    Random random = new Random(3);
    Controller.Course course = law.begin();
    FramesBuilder log = new FramesBuilder();
    double offset = 0;
    for (int i = 0; i < frames; i++) {
      offset = 0.6 * offset + 0.5 * random.nextGaussian();
      log.add(3 * i, offset, 0).pulses(Math.rint(course.next(offset)), 0);
    }
    return log;
  }

  private static LoopFit found(FramesBuilder log) {
    return LoopFit.of(log.build(), Axis.RA, OptionalDouble.empty()).value().orElseThrow();
  }

  private static String because(FramesBuilder log) {
    return LoopFit.of(log.build(), Axis.RA, OptionalDouble.empty()).because();
  }

  @Tag("identity")
  @ParameterizedTest(name = "slope {0}, deadband {1}, memory {2}, delay {3}, limit {4}")
  @CsvSource({
    "80, 0, 0, 0, 100000",
    "80, 0.3, 0, 0, 100000",
    "120, 0.2, 0, 2, 70",
    "200, 0, 0.35, 0, 100000",
    "150, 0.25, 0.6, 1, 60"
  })
  void lawIsRecovered(double slope, double deadband, double memory, int delay, double limit) {
    LoopFit fit =
        found(guided(new Controller(slope, deadband, memory, delay, -limit, limit), 2000));

    assertThat(fit.law().millisPerArcsec()).isCloseTo(slope, within(0.01 * slope));
    assertThat(fit.law().deadbandArcsec()).isCloseTo(deadband, within(0.01));
    assertThat(fit.law().memory()).isCloseTo(memory, within(0.01));
    assertThat(fit.law().delayFrames()).isEqualTo(delay);
    assertThat(fit.limitSeen()).isEqualTo(limit < 1000);
    assertThat(fit.explainedShare()).isGreaterThan(0.999);
    assertThat(fit.describes()).isTrue();
  }

  @Test
  void oneWayGuidingIsALawWithAClosedSide() {
    LoopFit fit = found(guided(new Controller(80, 0.1, 0, 0, 0, NONE), 1000));

    assertThat(fit.law().lowestMillis()).isZero();
    assertThat(fit.law().highestMillis()).isInfinite();
    assertThat(fit.explainedShare()).isGreaterThan(0.999);
  }

  @Test
  void pulsesThatFollowSomethingElseAreNotExplained() {
    Random random = new Random(5);
    FramesBuilder log = new FramesBuilder();
    for (int i = 0; i < 1000; i++) {
      double offset = random.nextGaussian();
      log.add(3 * i, offset, 0).pulses(20 * offset + 60 * random.nextGaussian(), 0);
    }

    LoopFit fit = found(log);
    assertThat(fit.explainedShare()).isLessThan(0.5);
    assertThat(fit.describes()).isFalse();
  }

  @Test
  void longStretchWithoutPulsesIsNotTheLoops() {
    FramesBuilder log = guided(new Controller(80, 0.3, 0, 0, -NONE, NONE), 600);
    for (int i = 600; i < 1000; i++) {
      log.add(3 * i, 0.02 * (i - 600), 0).pulses(0, 0);
    }

    LoopFit fit = found(log);
    assertThat(fit.law().deadbandArcsec()).isCloseTo(0.3, within(0.01));
    assertThat(fit.explainedShare()).isGreaterThan(0.999);
  }

  @Test
  void lag1SkipsFramesThatAreNotUsed() {
    FramesBuilder log = new FramesBuilder();
    for (int i = 0; i < 300; i++) {
      double offset = (i % 2 == 0 ? 1 : -1) * (1 + 1e-4 * i);
      log.add(3 * i, offset, 0).pulses(500 * offset, 0);
      if (i % 10 == 9) {
        log.state(FrameState.SETTLING);
      }
    }

    assertThat(found(log).lag1Autocorrelation()).isCloseTo(-1, within(0.02));
  }

  @Test
  void reasonsAreGivenWhereThereIsNoLaw() {
    assertThat(because(new FramesBuilder().add(0, 1, 1))).contains("no pulses");
    assertThat(because(guided(new Controller(0, 0, 0, 0, 0, 0), 100)))
        .contains("no pulse was sent");
    assertThat(because(guided(new Controller(80, 0, 0, 0, -NONE, NONE), 12)))
        .contains("record for longer");
    assertThat(because(guided(new Controller(8000, 0.2, 0, 0, -50, 50), 500)))
        .contains("as long as the loop allows");
    assertThat(because(guided(new Controller(-80, 0, 0, 0, -NONE, NONE), 500)))
        .contains("do not answer the offsets");
  }
}
