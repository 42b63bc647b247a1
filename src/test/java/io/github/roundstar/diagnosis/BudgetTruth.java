package io.github.roundstar.diagnosis;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.simulate.FrameTruth;
import io.github.roundstar.simulate.FrameTruth.Column;
import io.github.roundstar.simulate.MountPlan;
import io.github.roundstar.simulate.Scenario;
import io.github.roundstar.simulate.SimulatedRun;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The true budget of a simulated run with one pulse a frame and no delay: the simulator's own
 * series of every cause, each through a plain recursion with the true gain, times the true offsets.
 * Shares no code with the estimator.
 */
final class BudgetTruth {
  private BudgetTruth() {}

  /** Mean square by cause [arcsec^2]. */
  static Map<String, Double> of(SimulatedRun run, Axis axis, Scenario scenario, double gain) {
    FrameTruth truth = run.frames();
    int n = truth.size();
    boolean ra = axis == Axis.RA;
    Map<String, double[]> causes = new LinkedHashMap<>();
    causes.put("drift-lag", column(truth, ra ? Column.STEADY_RA : Column.STEADY_DEC));
    causes.put("wander", column(truth, ra ? Column.WANDER_RA : Column.WANDER_DEC));
    causes.put("noise", column(truth, ra ? Column.ERROR_RA : Column.ERROR_DEC));
    double cosine = Math.cos(Math.toRadians(run.truth().declinationDegrees()));
    double[] jolts = column(truth, ra ? Column.MOTION_RA : Column.MOTION_DEC);
    for (MountPlan.Harmonic harmonic : scenario.mount().worm().harmonics()) {
      if (ra) {
        double[] tone = tone(run, scenario, harmonic, cosine);
        causes.put(
            harmonic.order() == 1 ? "periodic:worm" : "periodic:worm/" + harmonic.order(), tone);
        subtract(jolts, tone);
      }
    }
    subtract(jolts, causes.get("drift-lag"));
    subtract(jolts, causes.get("wander"));
    causes.put("jolts", jolts);
    causes.put("backlash", ra ? new double[n] : column(truth, Column.DEC_LAG));
    Map<String, Double> parts = new LinkedHashMap<>();
    double[] offsets = new double[n];
    for (int i = 0; i < n; i++) {
      offsets[i] = axis.offsetArcsec(run.log().frames(), i);
    }
    causes.forEach((cause, series) -> parts.put(cause, product(left(series, gain), offsets, run)));
    return parts;
  }

  static double[] rms(SimulatedRun run, Axis axis) {
    FrameTruth truth = run.frames();
    boolean ra = axis == Axis.RA;
    double[] log = new double[truth.size()];
    double[] motion = new double[truth.size()];
    for (int i = 0; i < log.length; i++) {
      log[i] = axis.offsetArcsec(run.log().frames(), i);
      motion[i] = log[i] - truth.at(ra ? Column.ERROR_RA : Column.ERROR_DEC, i);
    }
    double[] one = new double[log.length];
    java.util.Arrays.fill(one, 1);
    double m = product(log, one, run);
    double k = product(motion, one, run);
    return new double[] {
      Math.sqrt(product(log, log, run) - m * m), Math.sqrt(product(motion, motion, run) - k * k)
    };
  }

  private static double[] tone(
      SimulatedRun run, Scenario scenario, MountPlan.Harmonic harmonic, double cosine) {
    double[] tone = new double[run.frames().size()];
    double rate = 2 * Math.PI * harmonic.order() / scenario.mount().worm().periodSeconds();
    double half = rate * scenario.evening().exposureSeconds() / 2;
    double phase = harmonic.phaseRadians() + harmonic.order() * run.truth().wormPhaseRadians();
    for (int i = 0; i < tone.length; i++) {
      tone[i] =
          cosine
              * harmonic.amplitudeArcsec()
              * Math.sin(half)
              / half
              * Math.sin(rate * run.log().frames().timeSeconds(i) + phase);
    }
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

  private static double[] column(FrameTruth truth, Column column) {
    double[] values = new double[truth.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = truth.at(column, i);
    }
    return values;
  }

  private static void subtract(double[] values, double[] part) {
    for (int i = 0; i < values.length; i++) {
      values[i] -= part[i];
    }
  }
}
