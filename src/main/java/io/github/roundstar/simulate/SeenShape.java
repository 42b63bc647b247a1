package io.github.roundstar.simulate;

import io.github.roundstar.simulate.SimulatedExposure.Image;
import java.util.List;

/**
 * What a program that measures stars sees of an exposure: moments under a Gaussian weight that
 * follows the star, on a finely drawn image of one star without noise.
 */
final class SeenShape {
  private static final double STEP_ARCSEC = 0.4;
  private static final int MOST_PLACES = 400;
  private static final int ITERATIONS = 60;

  private final double[] values;
  private final int side;
  private final double corner;

  private SeenShape(List<double[]> path, Image still) {
    double reach = 4 * StrictMath.sqrt(Math.max(still.ee(), still.nn()));
    double[] mean = new double[2];
    for (double[] at : path) {
      mean[0] += at[0] / path.size();
      mean[1] += at[1] / path.size();
    }
    double far = 0;
    for (double[] at : path) {
      far = Math.max(far, Math.max(Math.abs(at[0] - mean[0]), Math.abs(at[1] - mean[1])));
    }
    corner = -(far + reach);
    side = (int) Math.ceil(-2 * corner / STEP_ARCSEC) + 1;
    values = new double[side * side];
    double determinant = still.ee() * still.nn() - still.en() * still.en();
    int stride = (path.size() + MOST_PLACES - 1) / MOST_PLACES;
    for (int p = 0; p < path.size(); p += stride) {
      double px = path.get(p)[0] - mean[0];
      double py = path.get(p)[1] - mean[1];
      for (int i = index(px - reach); i <= index(px + reach); i++) {
        for (int j = index(py - reach); j <= index(py + reach); j++) {
          double dx = corner + i * STEP_ARCSEC - px;
          double dy = corner + j * STEP_ARCSEC - py;
          double square =
              (still.nn() * dx * dx - 2 * still.en() * dx * dy + still.ee() * dy * dy)
                  / determinant;
          values[j * side + i] += StrictMath.exp(-square / 2);
        }
      }
    }
  }

  private int index(double place) {
    return Math.max(0, Math.min(side - 1, (int) Math.rint((place - corner) / STEP_ARCSEC)));
  }

  /**
   * The shape seen.
   *
   * @param path places of the star during the exposure [arcsec]
   * @param still image of a star that rests
   * @param start where to begin: the plain moments
   */
  static Image of(List<double[]> path, Image still, Image start) {
    SeenShape drawn = new SeenShape(path, still);
    double[] state = {0, 0, start.ee(), start.nn(), start.en()};
    for (int i = 0; i < ITERATIONS; i++) {
      drawn.weigh(state);
    }
    return new Image(state[2], state[3], state[4]);
  }

  private void weigh(double[] state) {
    double determinant = state[2] * state[3] - state[4] * state[4];
    double reachX = 4 * StrictMath.sqrt(state[2]);
    double reachY = 4 * StrictMath.sqrt(state[3]);
    double[] sums = new double[6];
    for (int j = index(state[1] - reachY); j <= index(state[1] + reachY); j++) {
      for (int i = index(state[0] - reachX); i <= index(state[0] + reachX); i++) {
        double dx = corner + i * STEP_ARCSEC - state[0];
        double dy = corner + j * STEP_ARCSEC - state[1];
        double square =
            (state[3] * dx * dx - 2 * state[4] * dx * dy + state[2] * dy * dy) / determinant;
        double w = values[j * side + i] * StrictMath.exp(-square / 2);
        sums[0] += w;
        sums[1] += w * dx;
        sums[2] += w * dy;
        sums[3] += w * dx * dx;
        sums[4] += w * dy * dy;
        sums[5] += w * dx * dy;
      }
    }
    double mx = sums[1] / sums[0];
    double my = sums[2] / sums[0];
    state[0] += 2 * mx;
    state[1] += 2 * my;
    state[2] = 2 * (sums[3] / sums[0] - mx * mx);
    state[3] = 2 * (sums[4] / sums[0] - my * my);
    state[4] = 2 * (sums[5] / sums[0] - mx * my);
  }
}
