package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** An axis that sticks, against worked pushes, small steps of time, and the simulator. */
class StickyAxisTest {
  private static final double CADENCE = 2.5;
  private static final double EXPOSURE = 1.8;
  private static final double[] MILLIS = {
    200, -100, 300, 900, -50, -2400, 60, 4200, -700, -300, 250, 3900, -3900, 800, 0, 0
  };

  /**
   * By hand: threshold 1, pushes 0.5, 0.4, 0.3 (lets go after 0.1 of it and has made up for 1.2 at
   * its end), -0.6, 0.2, -0.7 (lets go after 0.6: then -1.1 in all).
   */
  @Test
  void letsGoWholeWhenPushesAddUp() {
    StickyAxis axis = new StickyAxis(1, 0, 0);
    double[] pushes = {0.5, 0.4, 0.3, -0.6, 0.2, -0.7};
    double[] lost = {0.5, 0.4, 0.1, 0.6, 0.2, 0.6};
    double[] moved = {0, 0, 1.2, 0, 0, -1.1};
    for (int i = 0; i < pushes.length; i++) {
      double waited = axis.lost(pushes[i]);
      double follows = Math.abs(pushes[i]) - waited;
      double whole = follows < 1e-12 ? 0 : follows + axis.leap(pushes[i]);

      assertThat(waited).as("push %d", i).isCloseTo(lost[i], within(1e-12));
      assertThat(Math.copySign(whole, pushes[i])).isCloseTo(moved[i], within(1e-12));
    }
  }

  /**
   * Pulses that run into exposures and into each other's frames, against the same axis stepped in
   * slices of 20 microseconds.
   */
  @Test
  @Tag("identity")
  void exposuresSeeItAsSmallStepsDo() {
    for (double start : new double[] {0, 0.5, -0.75}) {
      double[] seen = seen(start);
      double[] stepped = stepped(0.6, start * 0.6);
      for (int k = 0; k < seen.length; k++) {
        assertThat(seen[k]).as("start %s, frame %d", start, k).isCloseTo(stepped[k], within(2e-4));
      }
    }
  }

  private static double[] seen(double start) {
    Frames frames = frames();
    PulseTrain moved = PulseTrain.sent(frames, Axis.DEC).behind(new StickyAxis(0.6, start, 0));
    double[] net = ExecutedPulses.seconds(new ExposureTimes(frames, EXPOSURE), moved, 0, 1);
    double[] south = ExecutedPulses.seconds(new ExposureTimes(frames, EXPOSURE), moved, 0, -1);
    for (int k = 0; k < net.length; k++) {
      net[k] -= south[k];
    }
    return net;
  }

  private static Frames frames() {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < MILLIS.length; i++) {
      frames.add(CADENCE * i, 0, 0).pulses(0, MILLIS[i]);
    }
    return frames.build();
  }

  /**
   * What each exposure sees of the tube: each pulse's own course in small steps, all added up,
   * since the tube does in a pulse that overlaps the next what it does in that pulse.
   */
  private static double[] stepped(double threshold, double withheld) {
    double step = 2e-5;
    double[] mean = new double[MILLIS.length];
    double motor = withheld;
    double tube = 0;
    for (int p = 0; p < MILLIS.length; p++) {
      double before = tube;
      boolean sliding = false;
      double sent = CADENCE * p + EXPOSURE / 2;
      int steps = (int) Math.round(Math.abs(MILLIS[p]) / 1000 / step);
      double end = CADENCE * MILLIS.length;
      double now = sent;
      for (int i = 0; now < end; i++, now += step) {
        if (i < steps) {
          motor += Math.signum(MILLIS[p]) * step;
          sliding |= Math.abs(motor - tube) > threshold;
          tube = sliding ? motor : tube;
        }
        int k = (int) Math.floor((now + step / 2 + EXPOSURE / 2) / CADENCE);
        double into = now + step / 2 + EXPOSURE / 2 - k * CADENCE;
        if (k < mean.length && k > p && into < EXPOSURE) {
          mean[k] += (tube - before) * step / EXPOSURE;
        }
      }
    }
    return mean;
  }

  /**
   * A simulated night without noise, wander or drift: behind an axis that sticks as the simulated
   * one does, nothing is left of the motion but the log's rounding.
   */
  @Test
  @Tag("identity")
  void simulatedAxisIsUndone() throws Exception {
    SimulatedRun night =
        Simulation.run(
                ScenarioReader.parse(
                    "still",
                    """
                    [night]
                    seed = 4
                    cadence_s = 3
                    guide_exposure_s = 2
                    guide_scale = 2.43
                    [noise]
                    white_arcsec = 0
                    [star]
                    snr = 10000
                    [loop]
                    pulse_limit_ms = 1000
                    [loop.dec]
                    gain = 0.7
                    [dither]
                    every_min = 2
                    size_arcsec = 3
                    logs_shift = true
                    [[run]]
                    duration_min = 60
                    declination_deg = 0
                    [mount]
                    guide_rate = 0.5
                    dec_stiction_arcsec = 0.8
                    """))
            .runs()
            .get(0);
    Reconstruction made =
        Reconstruction.of(night.log(), Axis.DEC, Equipment.UNKNOWN).value().orElseThrow();
    double range = range(made.sky(new PulseEffect(1, 1, 0, LostMotion.sticking(0.8, 0, 0))));

    assertThat(range).isLessThan(0.05);
    assertThat(range(made.sky())).isGreaterThan(0.7);
  }

  private static double range(MotionSeries motion) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double value : motion.arcsec()) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return high - low;
  }
}
