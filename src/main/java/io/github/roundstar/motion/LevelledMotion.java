package io.github.roundstar.motion;

import java.util.ArrayList;
import java.util.List;

/**
 * A run's motion with its unknown steps closed: each piece is moved so that what drift and
 * sinusoids leave goes on where the piece before it ended. For display, spectrum and folding; the
 * fits need no such closing. Immutable.
 */
public final class LevelledMotion {
  /** Samples on either side whose mean decides the step. */
  private static final int SAMPLES = 10;

  private final AxisRun run;
  private final double[] arcsec;
  private final double[] driftArcsec;
  private final double[] leftArcsec;

  private LevelledMotion(AxisRun run, double[] arcsec, double[] driftArcsec, double[] leftArcsec) {
    this.run = run;
    this.arcsec = arcsec;
    this.driftArcsec = driftArcsec;
    this.leftArcsec = leftArcsec;
  }

  static List<LevelledMotion> of(SharedFit fit) {
    List<LevelledMotion> all = new ArrayList<>();
    ToneModel model = fit.model();
    double[] parameters = fit.parameters();
    for (int r = 0; r < model.backgrounds().size(); r++) {
      AxisRun run = model.backgrounds().get(r).run();
      double[] fitted = model.values(parameters, r);
      double[] left = run.motion().arcsec();
      for (int i = 0; i < left.length; i++) {
        left[i] -= fitted[i];
      }
      closeSteps(left, run.motion());
      double[] whole = new double[left.length];
      double[] drift = model.driftAndBend(parameters, r);
      for (int i = 0; i < left.length; i++) {
        whole[i] = left[i] + fitted[i];
      }
      all.add(new LevelledMotion(run, whole, drift, left));
    }
    return all;
  }

  /** The run. */
  public AxisRun run() {
    return run;
  }

  /** Number of samples; their times are those of the run's motion. */
  public int size() {
    return arcsec.length;
  }

  /** Motion, starting near zero [arcsec]. */
  public double arcsec(int i) {
    return arcsec[i];
  }

  /** The part of drift and bend in it [arcsec]. */
  public double driftArcsec(int i) {
    return driftArcsec[i];
  }

  /** What drift and sinusoids leave [arcsec]. */
  public double leftArcsec(int i) {
    return leftArcsec[i];
  }

  private static void closeSteps(double[] left, MotionSeries motion) {
    double level = 0;
    int begin = 0;
    while (begin < left.length) {
      int end = begin + 1;
      while (end < left.length && !motion.startsPiece(end)) {
        end++;
      }
      double first = mean(left, begin, Math.min(begin + SAMPLES, end));
      double last = mean(left, Math.max(begin, end - SAMPLES), end);
      for (int i = begin; i < end; i++) {
        left[i] += level - first;
      }
      level += last - first;
      begin = end;
    }
  }

  private static double mean(double[] values, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += values[i];
    }
    return sum / (to - from);
  }
}
