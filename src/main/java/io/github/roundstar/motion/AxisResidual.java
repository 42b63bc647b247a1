package io.github.roundstar.motion;

import java.util.List;

/**
 * What a polar axis leaves of the drifts of a night.
 *
 * @param chance chance of residuals at least so large by wander, noise and pulses alone; NaN when
 *     there is nothing left to test with
 * @param misfitArcsecPerMinute root mean square of the runs' drifts in declination against those of
 *     the axis [arcsec/min]
 * @param pattern what the residuals follow
 */
public record AxisResidual(double chance, double misfitArcsecPerMinute, Pattern pattern) {
  /** What a drift beside the axis follows. */
  public enum Pattern {
    /** No drift is needed beside the axis. */
    NONE,
    /** It changes its sign with the side of the pier. */
    PIER_SIDE {
      @Override
      double[] weights(List<PointedRun> runs) {
        return runs.stream().mapToDouble(PointedRun::motorSign).toArray();
      }

      @Override
      boolean tellable(List<PointedRun> runs) {
        return runs.stream().allMatch(run -> run.motorSign() != 0)
            && runs.stream().mapToInt(PointedRun::motorSign).distinct().count() > 1;
      }
    },
    /** It is the same in all runs. */
    CONSTANT {
      @Override
      double[] weights(List<PointedRun> runs) {
        return runs.stream().mapToDouble(run -> 1).toArray();
      }
    },
    /** Neither explains it. */
    IRREGULAR;

    static final List<Pattern> REGULAR = List.of(PIER_SIDE, CONSTANT);

    /** Drift of each run per unit of the drift beside the axis. */
    double[] weights(List<PointedRun> runs) {
      return new double[0];
    }

    /** Whether the runs can show it. */
    boolean tellable(List<PointedRun> runs) {
      return regular();
    }

    boolean regular() {
      return REGULAR.contains(this);
    }
  }
}
