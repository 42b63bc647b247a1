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

  private static final double NORMAL_95 = 1.959964;

  private final double[] frames;
  private final double[] logged;
  private final double[] loggedSquare;
  private final double[] motion;
  private final double[] motionSquare;

  ReplayedRun(
      double[] frames,
      double[] logged,
      double[] loggedSquare,
      double[] motion,
      double[] motionSquare) {
    this.frames = frames;
    this.logged = logged;
    this.loggedSquare = loggedSquare;
    this.motion = motion;
    this.motionSquare = motionSquare;
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
    return Estimate.symmetric(whole, NORMAL_95 * Math.sqrt(variance));
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
