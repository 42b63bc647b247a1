package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Pulses behind a play: what a reversal loses, and when the rest begins. */
class PulseTrainTest {
  private static final Offset<Double> EXACT = within(1e-12);

  /**
   * Worked values of the play operator with half width 1 (whole play 2), engaged for pushes to the
   * positive side: six pulses of +0.5, twelve of -0.5, eight of +0.5 move the axis by +0.5 six
   * times; not at all four times, then -0.5 eight times; not at all four times, then +0.5 four
   * times. Operator: Krasnosel'skii &amp; Pokrovskii, Systems with Hysteresis (1989), from memory;
   * numbers by direct evaluation in Python.
   */
  @Test
  @Tag("published")
  void reversalsLoseTheWholePlay() {
    double[] pulses = new double[26];
    for (int i = 0; i < pulses.length; i++) {
      pulses[i] = i < 6 || i >= 18 ? 500 : -500;
    }
    PulseTrain moved = PulseTrain.sent(frames(pulses), Axis.DEC).behind(new GearPlay(2, 0, 0));
    for (int i = 0; i < pulses.length; i++) {
      double expected = i < 6 ? 0.5 : i < 10 ? 0 : i < 18 ? -0.5 : i < 22 ? 0 : 0.5;
      assertThat(moved.seconds(i)).as("pulse %d", i).isCloseTo(expected, EXACT);
    }
  }

  /**
   * The same source: half width 1.5, motor at 0, 1, 2, 3, 4, 3, ..., -2, 0, 2, 5, axis at first 0.
   */
  @Test
  @Tag("published")
  void axisFollowsAsTheOperatorSays() {
    double[] motor = {0, 1, 2, 3, 4, 3, 2, 1, 0, -1, -2, 0, 2, 5};
    double[] axis = {0, 0, 0.5, 1.5, 2.5, 2.5, 2.5, 2.5, 1.5, 0.5, -0.5, -0.5, 0.5, 3.5};
    double[] pulses = new double[motor.length - 1];
    for (int i = 0; i < pulses.length; i++) {
      pulses[i] = 1000 * (motor[i + 1] - motor[i]);
    }
    PulseTrain moved = PulseTrain.sent(frames(pulses), Axis.DEC).behind(new GearPlay(3, 0.5, 0));
    double at = 0;
    for (int i = 0; i < pulses.length; i++) {
      at += moved.seconds(i);
      assertThat(at).as("axis after pulse %d", i).isCloseTo(axis[i + 1], EXACT);
    }
  }

  @Test
  void whatIsLeftOfAPulseComesAtItsEnd() {
    PulseTrain moved = PulseTrain.sent(frames(900, -300), Axis.DEC).behind(new GearPlay(0.4, 1, 0));
    assertThat(moved.delaySeconds(0)).isCloseTo(0.4, EXACT);
    assertThat(moved.seconds(0)).isCloseTo(0.5, EXACT);
    assertThat(moved.seconds(1)).isZero();
  }

  @Test
  void withoutPlayNothingIsLost() {
    PulseTrain sent = PulseTrain.sent(frames(900, -300, 0, 20), Axis.DEC);
    PulseTrain moved = sent.behind(new GearPlay(0, 0.5, 0));
    for (int i = 0; i < 4; i++) {
      assertThat(moved.seconds(i)).isEqualTo(sent.seconds(i));
      assertThat(moved.delaySeconds(i)).isZero();
    }
  }

  private static Frames frames(double... decMillis) {
    FramesBuilder builder = new FramesBuilder();
    for (int i = 0; i < decMillis.length; i++) {
      builder.add(3 * i, 0, 0).pulses(0, decMillis[i]);
    }
    return builder.build();
  }
}
