package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.posterior.Figure;
import io.github.roundstar.sky.SiderealRate;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Logs as bad as they come have an answer or a reason, and nothing hangs. */
@Tag("identity")
class AxisKnowledgeTest {
  private static final double RATE = 0.5 * SiderealRate.ARCSEC_PER_SECOND;
  private static final Runs SETTINGS = Runs.NOTHING_KNOWN.declination(0).guideRate(0.5).exposure(1);

  /** A star that drifts, pushed by given pulses; what they do is not always what is declared. */
  private static GuideRun run(int frames, double strength, IntToDoubleFunction pulseMillis) {
    return run(SETTINGS, frames, strength, pulseMillis, frame -> false);
  }

  private static GuideRun run(
      Runs settings,
      int frames,
      double strength,
      IntToDoubleFunction pulseMillis,
      java.util.function.IntPredicate lost) {
    Random random = new Random(3);
    FramesBuilder builder = new FramesBuilder();
    double pushed = 0;
    for (int i = 0; i < frames; i++) {
      double offset = 0.01 * i + 0.3 * random.nextGaussian() - strength * pushed;
      double pulse = pulseMillis.applyAsDouble(i);
      if (lost.test(i)) {
        builder.add(3 * i, Double.NaN, Double.NaN).state(FrameState.LOST);
      } else {
        builder.add(3 * i, offset, offset);
      }
      builder.pulses(pulse, pulse);
      pushed += RATE * pulse / 1000;
    }
    return settings.of(builder.build());
  }

  private static Answer<AxisKnowledge> of(GuideRun run, Axis axis) {
    AxisNight night =
        axis == Axis.RA
            ? AxisNight.ra(List.of(run), Equipment.UNKNOWN)
            : AxisNight.dec(List.of(run), Equipment.UNKNOWN);
    return night.runs().get(0).map(AxisMotion::known);
  }

  private static AxisKnowledge known(GuideRun run, Axis axis) {
    return of(run, axis).value().orElseThrow();
  }

  /** The first numbers of java.util.Random's neighbouring seeds are nearly the same. */
  private static double random(int i) {
    return 400 * (new SplittableRandom(i).nextDouble() - 0.5);
  }

  @Test
  void strengthIsFoundWhereTheDeclaredRateIsWrongByAFifth() {
    Figure strength =
        known(run(400, 1.2, AxisKnowledgeTest::random), Axis.RA).posterior().strength();
    assertThat(strength.estimate().covers(1.2)).isTrue();
    assertThat(strength.estimate().value()).isCloseTo(1.2, within(0.05));
    assertThat(strength.learned()).isGreaterThan(0.8);
  }

  @Test
  void strengthIsFoundWhereNoRateIsDeclared() {
    Runs undeclared = Runs.NOTHING_KNOWN.declination(0).exposure(1);
    for (double strength : new double[] {0.5, 1, 1.8}) {
      GuideRun run = run(undeclared, 400, strength, AxisKnowledgeTest::random, frame -> false);
      Figure found = known(run, Axis.DEC).posterior().strength();
      assertThat(found.estimate().covers(strength)).isTrue();
      assertThat(found.estimate().value()).isCloseTo(strength, within(0.05 * strength));
      assertThat(found.learned()).isGreaterThan(0.8);
    }
    GuideRun steady = run(undeclared, 300, 1, i -> 20, frame -> false);
    Figure unknown = known(steady, Axis.RA).posterior().strength();
    assertThat(unknown.estimate().hi95() - unknown.estimate().lo95()).isGreaterThan(1);
    assertThat(unknown.learned()).isLessThan(0.5);
  }

  @Test
  void driftIsFoundWithoutAnyPulse() {
    AxisKnowledge known = known(run(300, 1, i -> 0), Axis.DEC);
    assertThat(known.driftArcsecPerMinuteSky(1).orElseThrow().estimate().covers(0.2)).isTrue();
    assertThat(known.posterior().strength().learned()).isLessThan(0.01);
  }

  @Test
  void pulsesThatNeverVaryLeaveTheStrengthAsDeclared() {
    Figure strength = known(run(300, 1, i -> 20), Axis.RA).posterior().strength();
    assertThat(strength.estimate().covers(1)).isTrue();
    assertThat(strength.estimate().hi95() - strength.estimate().lo95()).isGreaterThan(0.05);
  }

  @Test
  void twentyFramesHaveAnAnswerAndNineteenAReason() {
    assertThat(of(run(20, 1, AxisKnowledgeTest::random), Axis.DEC).value()).isPresent();
    assertThat(of(run(19, 1, AxisKnowledgeTest::random), Axis.DEC).because())
        .contains("too few measured frames");
  }

  @Test
  void offsetsOfTwoValuesHaveAnAnswer() {
    FramesBuilder builder = new FramesBuilder();
    Random values = new Random(5);
    for (int i = 0; i < 200; i++) {
      builder.add(2 * i, values.nextBoolean() ? 0.1 : 0.2, 0.1).pulses(random(i), 0);
    }
    GuideRun run = SETTINGS.of(builder.build());
    assertThat(known(run, Axis.RA).noiseArcsec().estimate().value()).isBetween(0.02, 0.2);
    assertThat(of(run, Axis.DEC).because()).contains("never change");
  }

  @Test
  void oneFrameInTwentyIsEnoughToGoOn() {
    GuideRun run = run(SETTINGS, 2000, 1, AxisKnowledgeTest::random, i -> i % 20 != 0);
    assertThat(of(run, Axis.RA).because()).contains("too few measured frames");
    GuideRun twoTogether = run(SETTINGS, 2000, 1, AxisKnowledgeTest::random, i -> i % 40 > 1);
    assertThat(known(twoTogether, Axis.RA).noiseArcsec().estimate().covers(0.3)).isTrue();
  }

  @Test
  void pulsesOfOneDirectionTellThatDirection() {
    AxisKnowledge known = known(run(400, 1.1, i -> Math.abs(random(i))), Axis.DEC);
    assertThat(known.posterior().oneWay().estimate().covers(1.1)).isTrue();
    assertThat(known.posterior().playProbability()).isZero();
  }

  @Test
  void rateOfZeroPushesNothing() {
    GuideRun run = run(SETTINGS.guideRate(0), 300, 1, AxisKnowledgeTest::random, i -> false);
    AxisKnowledge known = known(run, Axis.DEC);
    // Of the prior's tails some two parts in a hundred are too light to be kept.
    assertThat(known.posterior().strength().learned()).isLessThan(0.03);
  }
}
