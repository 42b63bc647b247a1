package io.github.roundstar.diagnosis;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.simulate.FrameTruth;
import io.github.roundstar.simulate.FrameTruth.Column;
import io.github.roundstar.simulate.MountPlan;
import io.github.roundstar.simulate.Scenario;
import io.github.roundstar.simulate.SimulatedRun;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The true budget of a simulated run, tube west, without memory and delay: the simulator's own
 * series of every cause, each through a plain recursion with the gain that its pulses had on
 * average, times the offsets; what pulses differ from that average is the deadband's. Shares no
 * code with the estimator; the worm is its formula, jolts are what the motion has beyond drift,
 * wander and worm, play is how far the motor is ahead of the tube.
 */
final class BudgetTruth {
  private BudgetTruth() {}

  /** Mean square by cause [arcsec^2]. */
  static Map<String, Double> of(SimulatedRun run, Axis axis, Scenario scenario) {
    boolean ra = axis == Axis.RA;
    Map<String, double[]> causes = new LinkedHashMap<>();
    causes.put("drift-lag", column(run, ra ? Column.STEADY_RA : Column.STEADY_DEC));
    causes.put("wander", column(run, ra ? Column.WANDER_RA : Column.WANDER_DEC));
    double[] jolts = column(run, ra ? Column.MOTION_RA : Column.MOTION_DEC);
    causes.values().forEach(part -> subtract(jolts, part));
    if (ra) {
      for (MountPlan.Harmonic harmonic : scenario.mount().worm().harmonics()) {
        double[] tone = tone(run, scenario, harmonic);
        String source = harmonic.order() == 1 ? "worm" : "worm/" + harmonic.order();
        causes.put("periodic:" + source, tone);
        subtract(jolts, tone);
      }
    } else {
      causes.put("backlash", column(run, Column.DEC_LAG));
    }
    causes.put("noise", column(run, ra ? Column.ERROR_RA : Column.ERROR_DEC));
    causes.put("jolts", jolts);
    double[] offsets = offsets(run, axis);
    double[] moved = moved(run, axis, scenario);
    double gain = slope(moved, offsets, run);
    causes.put("deadband", withheld(moved, offsets, gain));
    Map<String, Double> parts = new LinkedHashMap<>();
    causes.forEach((cause, series) -> parts.put(cause, product(left(series, gain), offsets, run)));
    return parts;
  }

  /** RMS of the log's offsets and of the star's motion over the used frames. */
  static double[] rmsArcsec(SimulatedRun run, Axis axis) {
    double[] log = offsets(run, axis);
    double[] motion = log.clone();
    subtract(motion, column(run, axis == Axis.RA ? Column.ERROR_RA : Column.ERROR_DEC));
    return new double[] {rms(log, run), rms(motion, run)};
  }

  private static double[] offsets(SimulatedRun run, Axis axis) {
    double[] offsets = new double[run.frames().size()];
    Arrays.setAll(offsets, i -> axis.offsetArcsec(run.log().frames(), i));
    return offsets;
  }

  /** What the pulse of each frame moved [arcsec]. */
  private static double[] moved(SimulatedRun run, Axis axis, Scenario scenario) {
    double cosine =
        axis == Axis.RA ? Math.cos(Math.toRadians(run.truth().declinationDegrees())) : 1;
    double rate = scenario.mount().guideRateSidereal() * 15.041067 * cosine;
    MountPlan.Response response = scenario.mount().response();
    double positive = rate * (axis == Axis.RA ? response.east() : response.north());
    double negative = rate * (axis == Axis.RA ? response.west() : response.south());
    double[] moved = new double[run.frames().size()];
    Arrays.setAll(
        moved,
        i -> {
          double seconds = axis.pulseMillis(run.log().frames(), i) / 1000;
          return seconds * (seconds > 0 ? positive : negative);
        });
    return moved;
  }

  private static double slope(double[] moved, double[] offsets, SimulatedRun run) {
    double[] one = new double[moved.length];
    Arrays.fill(one, 1);
    double mean = product(offsets, one, run);
    double covariance = product(moved, offsets, run) - product(moved, one, run) * mean;
    return covariance / (product(offsets, offsets, run) - mean * mean);
  }

  private static double[] withheld(double[] moved, double[] offsets, double gain) {
    double[] withheld = new double[moved.length];
    for (int i = 1; i < withheld.length; i++) {
      withheld[i] = withheld[i - 1] + gain * offsets[i - 1] - moved[i - 1];
    }
    return withheld;
  }

  private static double[] tone(SimulatedRun run, Scenario scenario, MountPlan.Harmonic harmonic) {
    double cosine = Math.cos(Math.toRadians(run.truth().declinationDegrees()));
    double rate = 2 * Math.PI * harmonic.order() / scenario.mount().worm().periodSeconds();
    double half = rate * scenario.evening().exposureSeconds() / 2;
    double phase = harmonic.phaseRadians() + harmonic.order() * run.truth().wormPhaseRadians();
    double amplitude = cosine * harmonic.amplitudeArcsec() * Math.sin(half) / half;
    double[] tone = new double[run.frames().size()];
    Arrays.setAll(
        tone, i -> amplitude * Math.sin(rate * run.log().frames().timeSeconds(i) + phase));
    return tone;
  }

  private static double[] left(double[] series, double gain) {
    double[] left = new double[series.length];
    double corrected = 0;
    for (int i = 0; i < left.length; i++) {
      left[i] = series[i] - corrected;
      corrected += gain * left[i];
    }
    return left;
  }

  private static double rms(double[] values, SimulatedRun run) {
    double[] one = new double[values.length];
    Arrays.fill(one, 1);
    return Math.sqrt(product(values, values, run) - Math.pow(product(values, one, run), 2));
  }

  private static double product(double[] one, double[] other, SimulatedRun run) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < one.length; i++) {
      if (run.log().frames().state(i) == FrameState.USED) {
        sum += one[i] * other[i];
        n++;
      }
    }
    return sum / n;
  }

  private static double[] column(SimulatedRun run, Column column) {
    FrameTruth truth = run.frames();
    double[] values = new double[truth.size()];
    Arrays.setAll(values, i -> truth.at(column, i));
    return values;
  }

  private static void subtract(double[] values, double[] part) {
    for (int i = 0; i < values.length; i++) {
      values[i] -= part[i];
    }
  }
}
