package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import java.util.List;

/**
 * What a run would have been under some setting: mean squares about the run's mean of what the log
 * would show and of the star's motion, kept by stretches so that an interval can be had; immutable.
 */
public final class ReplayedRun {
  /** Stretches of a run that are left out one by one for the interval. */
  static final int STRETCHES = 24;

  private final double[] frames = new double[STRETCHES];
  private final double[] logged = new double[STRETCHES];
  private final double[] loggedSquare = new double[STRETCHES];
  private final double[] motion = new double[STRETCHES];
  private final double[] motionSquare = new double[STRETCHES];

  private ReplayedRun() {}

  /** Sums up a run while it is played. */
  static final class Tally {
    private final ReplayedRun run = new ReplayedRun();
    private final long samples;

    /** Begins a run of so many samples, counted or not. */
    Tally(int samples) {
      this.samples = samples;
    }

    /** Counts where the star was at a sample, and how well that is known. */
    void move(int sample, double arcsec, double variance) {
      int s = stretch(sample);
      run.frames[s]++;
      run.motion[s] += arcsec;
      run.motionSquare[s] += arcsec * arcsec + variance;
    }

    /** Counts what the log shows for the last few samples, at the last of them. */
    void log(int sample, int counted, double arcsec) {
      int s = stretch(sample);
      run.logged[s] += counted * arcsec;
      run.loggedSquare[s] += counted * arcsec * arcsec;
    }

    /** The run; nothing is counted afterwards. */
    ReplayedRun run() {
      return run;
    }

    private int stretch(int sample) {
      return (int) (STRETCHES * sample / samples);
    }
  }

  /** RMS that the logs of these runs would show [arcsec]; NaN without frames. */
  public static double loggedRmsArcsec(List<ReplayedRun> runs) {
    return rms(runs, -1, -1, true);
  }

  /** RMS of the star's motion over these runs [arcsec]; NaN without frames. */
  public static double motionRmsArcsec(List<ReplayedRun> runs) {
    return rms(runs, -1, -1, false);
  }

  /**
   * How much less the star would have moved than under another setting, as a difference of RMS
   * [arcsec]. The interval is from leaving out stretches one by one, the same in both.
   *
   * @param runs the runs under the setting
   * @param others the same runs under the other
   * @see "Kuensch (1989), Ann. Stat. 17, 1217, for the jackknife of dependent data"
   */
  public static Estimate gainArcsec(List<ReplayedRun> runs, List<ReplayedRun> others) {
    double whole = motionRmsArcsec(others) - motionRmsArcsec(runs);
    int n = 0;
    double sum = 0;
    double squares = 0;
    for (int r = 0; r < runs.size(); r++) {
      for (int s = 0; s < STRETCHES; s++) {
        if (runs.get(r).frames[s] > 0) {
          double without = rms(others, r, s, false) - rms(runs, r, s, false);
          n++;
          sum += without;
          squares += without * without;
        }
      }
    }
    double variance = n < 2 ? 0 : (n - 1.0) / n * Math.max(0, squares - sum * sum / n);
    return Estimate.symmetric(whole, Estimate.SIGMAS_95 * Math.sqrt(variance));
  }

  private static double rms(List<ReplayedRun> runs, int leftOutRun, int leftOut, boolean ofLog) {
    double frames = 0;
    double squares = 0;
    for (int r = 0; r < runs.size(); r++) {
      ReplayedRun run = runs.get(r);
      double n = 0;
      double sum = 0;
      double square = 0;
      for (int s = 0; s < STRETCHES; s++) {
        if (r != leftOutRun || s != leftOut) {
          n += run.frames[s];
          sum += ofLog ? run.logged[s] : run.motion[s];
          square += ofLog ? run.loggedSquare[s] : run.motionSquare[s];
        }
      }
      frames += n;
      squares += n == 0 ? 0 : square - sum * sum / n;
    }
    return frames == 0 ? Double.NaN : Math.sqrt(Math.max(0, squares) / frames);
  }
}
