package io.github.roundstar.motion;

import io.github.roundstar.signal.WhiteRegression;
import java.util.List;

/**
 * What runs do when each drifts and bends as it likes: the yardstick for a polar axis that is to
 * explain them all.
 *
 * @param slopes mean drift of each run [arcsec/min]
 * @param bends height of each run's parabola at its ends [arcsec]
 * @param squares sum of squares of the white residuals, and of the excess response over what it is
 *     allowed
 */
record FreeDrifts(double[] slopes, double[] bends, double squares) {
  /** Fits, pulses pushing as declared give or take what they are allowed. */
  static FreeDrifts of(List<PointedRun> runs) {
    ResponseExcess excess = new ResponseExcess(runs);
    int drifts = 2 * runs.size();
    int rows = runs.stream().mapToInt(run -> run.background().whitening().size()).sum();
    double[][] design = new double[drifts + excess.size()][rows + excess.size()];
    double[] data = new double[rows + excess.size()];
    int next = 0;
    for (int r = 0; r < runs.size(); r++) {
      RunBackground background = runs.get(r).background();
      int at = next;
      ToneModel.append(background, background.run().phaseSeconds(), design[2 * r], at);
      ToneModel.append(background, ToneColumns.bend(background.run()), design[2 * r + 1], at);
      for (int e = 0; e < excess.size(); e++) {
        double[] into = design[drifts + e];
        excess.column(r, e).ifPresent(column -> ToneModel.append(background, column, into, at));
      }
      next = ToneModel.append(background, background.run().motion().arcsec(), data, at);
    }
    for (int e = 0; e < excess.size(); e++) {
      design[drifts + e][rows + e] = 1 / excess.deviation(e);
    }
    WhiteRegression fit = WhiteRegression.of(data, design);
    double[] slopes = new double[runs.size()];
    double[] bends = new double[runs.size()];
    for (int r = 0; r < slopes.length; r++) {
      slopes[r] = 60 * fit.coefficients()[2 * r];
      bends[r] = fit.coefficients()[2 * r + 1];
    }
    return new FreeDrifts(slopes, bends, fit.sumOfSquares());
  }
}
