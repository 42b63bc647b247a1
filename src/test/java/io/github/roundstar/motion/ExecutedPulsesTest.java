package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Pulse time acts from the end of the exposure on, and is averaged over exposures it runs into. */
class ExecutedPulsesTest {
  private static final Offset<Double> EXACT = within(1e-12);

  /** What pulses one way had done more than those the other way. */
  private static double[] net(Frames frames, Axis axis, double exposureSeconds) {
    double[] net =
        ExecutedPulses.seconds(
            new ExposureTimes(frames, exposureSeconds), PulseTrain.sent(frames, axis), 0, 1);
    double[] otherWay =
        ExecutedPulses.seconds(
            new ExposureTimes(frames, exposureSeconds), PulseTrain.sent(frames, axis), 0, -1);
    for (int i = 0; i < net.length; i++) {
      net[i] -= otherWay[i];
    }
    return net;
  }

  @Test
  void pulsesThatEndInTimeAddUp() {
    double[] acted = net(everyThreeSeconds(300, -200, 0, 500), Axis.RA, 1);
    assertThat(acted).containsExactly(new double[] {0, 0.3, 0.1, 0.1}, EXACT);
  }

  @Test
  void eachAxisHasItsOwnPulses() {
    Frames frames =
        new FramesBuilder().add(0, 0, 0).pulses(100, -400).add(3, 0, 0).pulses(0, 0).build();
    assertThat(net(frames, Axis.RA, 1)[1]).isEqualTo(0.1);
    assertThat(net(frames, Axis.DEC, 1)[1]).isEqualTo(-0.4);
  }

  /**
   * Exposures of 2 s at 0, 3, 6 s; a pulse of 1.6 s is sent at 1 s and ends at 2.6 s, the next
   * exposure runs from 2 to 4 s. There the acted time rises from 1 s to 1.6 s within 0.6 s: mean
   * (1.3 * 0.6 + 1.6 * 1.4) / 2 = 1.51 s.
   */
  @Test
  void pulseThatRunsIntoTheNextExposureIsAveragedOverIt() {
    double[] acted = net(everyThreeSeconds(1600, 0, 0), Axis.RA, 2);
    assertThat(acted).containsExactly(new double[] {0, 1.51, 1.6}, EXACT);
  }

  @Test
  void pushWestIsTheMirrorImage() {
    double[] acted = net(everyThreeSeconds(-1600, 0, 0), Axis.RA, 2);
    assertThat(acted).containsExactly(new double[] {0, -1.51, -1.6}, EXACT);
  }

  /**
   * A pulse of 7 s is sent at 1 s: exposures 2..4, 5..7 and 8..10 s see 1..3, 4..6 and 7 s of it.
   * One of 0.5 s that was sent in between, at 4 s, counts beside it.
   */
  @Test
  void pulseLongerThanTwoFramesActsInAll() {
    double[] acted = net(everyThreeSeconds(7000, 500, 0, 0, 0), Axis.RA, 2);
    assertThat(acted).containsExactly(new double[] {0, 2, 5.5, 7.5, 7.5}, EXACT);
  }

  @Test
  void pulseThatStopsInsideALaterExposureIsSplitThere() {
    // Sent at 1 s, ends at 5.5 s; exposure 5..7 s sees 4 to 4.5 s: (4.25 * 0.5 + 4.5 * 1.5) / 2.
    double[] acted = net(everyThreeSeconds(4500, 0, 0), Axis.RA, 2);
    assertThat(acted).containsExactly(new double[] {0, 2, 4.4375}, EXACT);
  }

  @Test
  void unknownExposureStartsThePulseAtItsFrame() {
    double[] acted = net(everyThreeSeconds(300, 4000, 0, 0), Axis.RA, 0);
    assertThat(acted).containsExactly(new double[] {0, 0.3, 3.3, 4.3}, EXACT);
  }

  /** The same averages by adding up thin slices of the exposure. */
  @Test
  @Tag("identity")
  void agreesWithSlices() {
    double[] pulses = {900, -2500, 4200, 60, -7100, 800, 0, 300, -5000, 0};
    FramesBuilder builder = new FramesBuilder();
    for (int i = 0; i < pulses.length; i++) {
      builder.add(2.5 * i + 0.3 * Math.sin(i), 0, 0).pulses(pulses[i], 0);
    }
    Frames frames = builder.build();
    double[] acted = net(frames, Axis.RA, 1.8);
    int slices = 20_000;
    for (int k = 0; k < pulses.length; k++) {
      double sum = 0;
      for (int s = 0; s < slices; s++) {
        double now = frames.timeSeconds(k) + 1.8 * ((s + 0.5) / slices - 0.5);
        for (int j = 0; j < k; j++) {
          double since = now - frames.timeSeconds(j) - 0.9;
          double length = Math.abs(pulses[j]) / 1000;
          sum += Math.signum(pulses[j]) * Math.max(0, Math.min(since, length)) / slices;
        }
      }
      assertThat(acted[k]).isCloseTo(sum, within(1e-7));
    }
  }

  /**
   * A million frames a hundredth of a second apart, each followed by a pulse that outlasts all of
   * them: pulse by pulse that would be half a million million steps. Frame k sees k pulses, of
   * which the one sent after frame j acts for (k - j) cadences, less half an exposure: the sum of
   * an arithmetic series.
   */
  @Test
  @Tag("identity")
  @Timeout(60)
  void pulsesThatNeverEndCostNoMore() {
    int count = 1_000_000;
    FramesBuilder builder = new FramesBuilder();
    for (int i = 0; i < count; i++) {
      builder.add(0.01 * i, 0, 0).pulses(1e7, 0);
    }
    double[] acted = net(builder.build(), Axis.RA, 0.004);
    for (int k : new int[] {1, 1000, count - 1}) {
      double sum = 0.01 * k * (k + 1.0) / 2 - 0.002 * k;
      assertThat(acted[k]).isCloseTo(sum, withinPercentage(1e-6));
    }
  }

  private static Frames everyThreeSeconds(double... pulsesMillis) {
    FramesBuilder builder = new FramesBuilder();
    for (int i = 0; i < pulsesMillis.length; i++) {
      builder.add(3 * i, 0, 0).pulses(pulsesMillis[i], 0);
    }
    return builder.build();
  }
}
