package io.github.roundstar.motion;

import io.github.roundstar.signal.WhiteRegression;
import java.util.List;

/**
 * What runs do when each drifts and bends as it likes beside the path of an axis: the yardstick for
 * a polar axis that is to explain them all.
 *
 * @param slopes mean drift of each run [arcsec/min]
 * @param bends height of each run's parabola at its ends [arcsec]
 * @param left mean drift of each run that the axis leaves [arcsec/min]
 * @param squares sum of squares of the white residuals about the axis's path
 */
record FreeDrifts(double[] slopes, double[] bends, double[] left, double squares) {
  /**
   * Fits.
   *
   * @param paths of the axis at the samples of each run [arcsec]; more than a bend of a long run is
   *     in them
   */
  static FreeDrifts of(
      List<PointedRun> runs, List<RunBackground> backgrounds, List<double[]> paths) {
    int drifts = 2 * runs.size();
    int rows = backgrounds.stream().mapToInt(b -> b.whitening().size()).sum();
    double[][] design = new double[drifts][rows];
    double[] data = new double[rows];
    double[] axis = new double[rows];
    int next = 0;
    for (int r = 0; r < runs.size(); r++) {
      RunBackground background = backgrounds.get(r);
      int at = next;
      ToneModel.append(background, background.run().phaseSeconds(), design[2 * r], at);
      ToneModel.append(background, ToneColumns.bend(background.run()), design[2 * r + 1], at);
      ToneModel.append(background, paths.get(r), axis, at);
      next = ToneModel.append(background, background.run().motion().arcsec(), data, at);
    }
    WhiteRegression fit = WhiteRegression.of(data, design);
    for (int i = 0; i < data.length; i++) {
      data[i] -= axis[i];
    }
    WhiteRegression about = WhiteRegression.of(data, design);
    double[] slopes = new double[runs.size()];
    double[] bends = new double[runs.size()];
    double[] left = new double[runs.size()];
    for (int r = 0; r < slopes.length; r++) {
      slopes[r] = 60 * fit.coefficients()[2 * r];
      left[r] = 60 * about.coefficients()[2 * r];
      bends[r] = fit.coefficients()[2 * r + 1];
    }
    return new FreeDrifts(slopes, bends, left, about.sumOfSquares());
  }
}
