package io.github.roundstar.motion;

import java.util.List;

/**
 * How much more than taken pulses in declination may push in the runs of a night, as two parameters
 * that all runs share: of both directions of the motor, and of half their difference. A tube on the
 * other side of the pier turns the motor's directions round on the sky.
 */
final class ResponseExcess {
  /** Number of parameters. */
  static final int SIZE = 2;

  /** An axis without pulses has no strength to be unsure of. */
  private static final double LEAST = 1e-6;

  private final List<PointedRun> runs;

  ResponseExcess(List<PointedRun> runs) {
    this.runs = runs;
  }

  /** One standard deviation of a parameter. */
  double deviation(int j) {
    AxisRun.Unsure unsure = runs.get(0).background().run().unsure();
    return Math.max(LEAST, j == 0 ? unsure.mean() : unsure.difference());
  }

  /** What a unit of a parameter changes in the motion of a run [arcsec]. */
  double[] column(int run, int j) {
    AxisRun of = runs.get(run).background().run();
    double[] column = ToneColumns.byExcess(of, 0);
    double[] other = ToneColumns.byExcess(of, 1);
    int sense = runs.get(run).motorSign() < 0 ? -1 : 1;
    for (int i = 0; i < column.length; i++) {
      column[i] = j == 0 ? column[i] + other[i] : sense * (column[i] - other[i]);
    }
    return column;
  }
}
