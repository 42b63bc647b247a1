package io.github.roundstar.motion;

import java.util.ArrayList;
import java.util.List;

/** Columns of sinusoids at the times of a run, as the guide exposure averages them. */
final class ToneColumns {
  /** Columns before those of the sinusoids: drift and bend. */
  static final int BEFORE_TONES = 2;

  private ToneColumns() {}

  /** Factor by which an exposure dims a sinusoid of angular rate {@code rate}: sinc. */
  static double averaging(double rate, double exposureSeconds) {
    double x = rate * exposureSeconds / 2;
    return x == 0 ? 1 : Math.sin(x) / x;
  }

  /** Two columns, cosine and sine, for every harmonic of every family, nothing shifted in time. */
  static double[][] free(AxisRun run, List<Family> families) {
    int count = families.stream().mapToInt(f -> f.harmonics().size()).sum();
    double[][] columns = new double[2 * count][];
    double[] seconds = run.phaseSeconds();
    int next = 0;
    for (Family family : families) {
      for (int harmonic : family.harmonics()) {
        double rate = harmonic * family.angularRate();
        double[] cosine = new double[seconds.length];
        double[] sine = new double[seconds.length];
        double dimming = averaging(rate, run.exposureSeconds());
        for (int i = 0; i < seconds.length; i++) {
          cosine[i] = dimming * Math.cos(rate * seconds[i]);
          sine[i] = dimming * Math.sin(rate * seconds[i]);
        }
        columns[next++] = cosine;
        columns[next++] = sine;
      }
    }
    return columns;
  }

  /** The free columns with two before them: the time itself for the drift, and the bend. */
  static double[][] withDrift(AxisRun run, List<Family> families) {
    double[][] tones = free(run, families);
    double[][] columns = new double[tones.length + BEFORE_TONES][];
    columns[0] = run.phaseSeconds();
    columns[1] = bend(run);
    System.arraycopy(tones, 0, columns, BEFORE_TONES, tones.length);
    return columns;
  }

  /**
   * A parabola about the middle of the run, of unit height at its ends: a drift changes as the star
   * crosses the sky. It leaves the drift's meaning alone, the mean slope over the run.
   */
  static double[] bend(AxisRun run) {
    return bend(run, run.phaseSeconds());
  }

  /** The same parabola at other times [s]. */
  static double[] bend(AxisRun run, double[] phaseSeconds) {
    double[] own = run.phaseSeconds();
    double[] bend = phaseSeconds.clone();
    if (own.length == 0) {
      return bend;
    }
    double middle = (own[0] + own[own.length - 1]) / 2;
    double half = Math.max(Double.MIN_NORMAL, (own[own.length - 1] - own[0]) / 2);
    for (int i = 0; i < bend.length; i++) {
      double x = (bend[i] - middle) / half;
      bend[i] = x * x;
    }
    return bend;
  }

  /**
   * What pulses of double the strength that was taken out would change in the motion [arcsec].
   *
   * @param direction 0 for pulses east or north, 1 for west or south
   */
  static double[] byExcess(AxisRun run, int direction) {
    MotionSeries motion = run.motion();
    if (direction == 1) {
      return motion.pushedOtherWayArcsec();
    }
    double[] pushed = motion.pushedOneWayArcsec();
    for (int i = 0; i < pushed.length; i++) {
      pushed[i] = -pushed[i];
    }
    return pushed;
  }

  /** {@link #withDrift} and what pulses of either direction push, where there are such pulses. */
  static double[][] withPulses(AxisRun run, List<Family> families) {
    List<double[]> columns = new ArrayList<>(List.of(withDrift(run, families)));
    for (int direction = 0; direction < 2; direction++) {
      double[] pushed = byExcess(run, direction);
      if (pushed.length > 0 && pushed[pushed.length - 1] != pushed[0]) {
        columns.add(pushed);
      }
    }
    return columns.toArray(double[][]::new);
  }
}
