package io.github.roundstar.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How much more than declared pulses in declination may push in the runs of a night, as parameters
 * that runs share.
 *
 * <p>Where the response is taken as declared, half of its variance goes with the direction on the
 * sky and half with the direction of the motor, which a tube on the other side of the pier turns
 * round: nobody knows which of the two a mount follows, and a polar axis from both sides depends on
 * it. A run without a pier side, or with a response of its own, has its own parameters.
 */
final class ResponseExcess {
  private static final double HALF = Math.sqrt(0.5);
  private static final int SHARED = 4;

  private final List<PointedRun> runs;
  private final List<Double> deviations = new ArrayList<>();
  private final int[] own;

  ResponseExcess(List<PointedRun> runs) {
    this.runs = runs;
    this.own = new int[runs.size()];
    for (int j = 0; j < SHARED; j++) {
      deviations.add(HALF * ToneModel.EXCESS_SHARE);
    }
    for (int r = 0; r < own.length; r++) {
      boolean measured = runs.get(r).background().run().responseMeasured();
      if (measured || runs.get(r).motorSign() == 0) {
        own[r] = deviations.size();
        double deviation = measured ? ToneModel.MEASURED_SHARE : ToneModel.EXCESS_SHARE;
        deviations.add(deviation);
        deviations.add(deviation);
      }
    }
  }

  /** Number of parameters. */
  int size() {
    return deviations.size();
  }

  /** One standard deviation of a parameter. */
  double deviation(int j) {
    return deviations.get(j);
  }

  /**
   * What a unit of a parameter changes in the motion of a run [arcsec]; nothing where it is not
   * its.
   */
  Optional<double[]> column(int run, int j) {
    int direction = direction(run, j);
    return direction < 0
        ? Optional.empty()
        : Optional.of(ToneColumns.byExcess(runs.get(run).background().run(), direction));
  }

  private int direction(int run, int j) {
    if (own[run] > 0) {
      return j == own[run] ? 0 : j == own[run] + 1 ? 1 : -1;
    }
    if (j >= SHARED) {
      return -1;
    }
    boolean turned = j >= 2 && runs.get(run).motorSign() < 0;
    return turned ? 1 - j % 2 : j % 2;
  }
}
