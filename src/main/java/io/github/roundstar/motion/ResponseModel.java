package io.github.roundstar.motion;

import java.util.ArrayList;
import java.util.List;

/**
 * Regressors for the strength of pulses in one run: drift, its bend, the sinusoids found, and what
 * pulses of either direction pushed as declared. The bend is there since a polar axis that is off
 * makes a drift that changes as the star crosses the sky, and pulses follow it.
 */
final class ResponseModel {
  private final double[][] columns;
  private final int firstExcess;
  private final boolean oneWay;
  private final boolean otherWay;

  private ResponseModel(double[][] columns, int firstExcess, boolean oneWay, boolean otherWay) {
    this.columns = columns;
    this.firstExcess = firstExcess;
    this.oneWay = oneWay;
    this.otherWay = otherWay;
  }

  /**
   * The regressors.
   *
   * @param run motion with the corrections as declared taken out
   * @param families sinusoids, each free
   */
  static ResponseModel of(AxisRun run, List<Family> families) {
    return of(run, families, List.of());
  }

  /**
   * The regressors with others beside them.
   *
   * @param more further columns at the samples of the motion
   */
  static ResponseModel of(AxisRun run, List<Family> families, List<double[]> more) {
    List<double[]> columns = new ArrayList<>(List.of(ToneColumns.withDrift(run, families)));
    columns.addAll(more);
    int first = columns.size();
    double[] pushedOneWay = run.motion().pushedOneWayArcsec();
    double[] pushedOtherWay = run.motion().pushedOtherWayArcsec();
    boolean oneWay = pushes(pushedOneWay);
    boolean otherWay = pushes(pushedOtherWay);
    if (oneWay) {
      for (int i = 0; i < pushedOneWay.length; i++) {
        pushedOneWay[i] = -pushedOneWay[i];
      }
      columns.add(pushedOneWay);
    }
    if (otherWay) {
      columns.add(pushedOtherWay);
    }
    return new ResponseModel(columns.toArray(double[][]::new), first, oneWay, otherWay);
  }

  double[][] columns() {
    return columns;
  }

  /** Whether there are pulses of either direction. */
  boolean bothWays() {
    return oneWay && otherWay;
  }

  /**
   * Column of the excess of pulses east or north (0) or west or south (1); -1 without such pulses.
   */
  int excess(int direction) {
    if (direction == 0) {
      return oneWay ? firstExcess : -1;
    }
    return otherWay ? firstExcess + (oneWay ? 1 : 0) : -1;
  }

  private static boolean pushes(double[] pushed) {
    return pushed.length > 0 && pushed[pushed.length - 1] > pushed[0];
  }
}
