package io.github.roundstar.motion.posterior;

import io.github.roundstar.motion.posterior.Lattice.Density;

/**
 * A peak of a density, climbed by parabolas through neighbouring points, and how wide it is.
 *
 * @param at where it is
 * @param logDensity how high it is
 * @param spread lower triangle L of the covariance L L' that its curvature stands for
 */
record Peak(double[] at, double logDensity, double[][] spread) {
  private static final int MOST_CLIMBS = 8;
  private static final int MOST_HALVINGS = 4;

  /** Points so much closer to each other than the last make another parabola. */
  private static final double CLOSER = 0.7;

  /** A parabola this far from its top is not believed any farther [steps]. */
  private static final double FARTHEST = 3;

  /**
   * Climbs.
   *
   * @param start where to begin
   * @param step about a standard deviation in each direction; at most twice and at least a
   *     twentieth of it is believed
   */
  static Peak climb(Density density, double[] start, double[] step) {
    int n = start.length;
    double[] x = start.clone();
    double[] h = step.clone();
    double value = density.at(x);
    double[][] curvature = new double[n][n];
    for (int climb = 0; climb < MOST_CLIMBS; climb++) {
      double[] slope = new double[n];
      double[] up = new double[n];
      for (int i = 0; i < n; i++) {
        up[i] = density.at(moved(x, i, h[i]));
        double down = density.at(moved(x, i, -h[i]));
        slope[i] = (up[i] - down) / (2 * h[i]);
        curvature[i][i] = (2 * value - up[i] - down) / (h[i] * h[i]);
      }
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < i; j++) {
          double both = density.at(moved(moved(x, i, h[i]), j, h[j]));
          curvature[i][j] = -(both - up[i] - up[j] + value) / (h[i] * h[j]);
          curvature[j][i] = curvature[i][j];
        }
      }
      bounded(curvature, step);
      double[] move = Cholesky.solveAny(curvature, slope);
      double far = 0;
      for (int i = 0; i < n; i++) {
        far = Math.max(far, Math.abs(move[i]) / h[i]);
      }
      double share = Math.min(1, FARTHEST / far);
      double gained = 0;
      for (int halving = 0; halving <= MOST_HALVINGS; halving++, share /= 2) {
        double[] trial = x.clone();
        for (int i = 0; i < n; i++) {
          trial[i] += share * move[i];
        }
        double there = density.at(trial);
        if (there > value) {
          gained = there - value;
          value = there;
          x = trial;
          break;
        }
      }
      boolean closer = false;
      for (int i = 0; i < n; i++) {
        double sigma = 1 / Math.sqrt(curvature[i][i]);
        double next = Math.max(step[i] / 20, Math.min(step[i], sigma));
        closer |= next < CLOSER * h[i];
        h[i] = next;
      }
      // A parabola through points too far from each other may lead nowhere.
      if (gained < 0.1 && !closer) {
        break;
      }
    }
    return new Peak(x, value, spread(curvature));
  }

  /** The same peak with a spread of at least so much along each column of its root. */
  Peak noNarrower(double least) {
    double[][] wider = new double[spread.length][];
    for (int i = 0; i < wider.length; i++) {
      wider[i] = spread[i].clone();
      wider[i][i] = Math.max(least, wider[i][i]);
    }
    return new Peak(at, logDensity, wider);
  }

  /** Standard deviation in a direction. */
  double deviation(int i) {
    double sum = 0;
    for (double part : spread[i]) {
      sum += part * part;
    }
    return Math.sqrt(sum);
  }

  private static double[] moved(double[] x, int i, double by) {
    double[] moved = x.clone();
    moved[i] += by;
    return moved;
  }

  /** Keeps a curvature positive, and no direction wider than its step. */
  private static void bounded(double[][] curvature, double[] step) {
    int n = step.length;
    for (int i = 0; i < n; i++) {
      double least = 0.8 / (step[i] * step[i]);
      if (!(curvature[i][i] > least)) {
        curvature[i][i] = least;
      }
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        double most = 0.9 / Math.max(1, n - 1) * Math.sqrt(curvature[i][i] * curvature[j][j]);
        double bounded = Math.max(-most, Math.min(most, curvature[i][j]));
        curvature[i][j] = Double.isNaN(bounded) ? 0 : bounded;
        curvature[j][i] = curvature[i][j];
      }
    }
  }

  private static double[][] spread(double[][] curvature) {
    int n = curvature.length;
    double[][] covariance = new double[n][n];
    for (int j = 0; j < n; j++) {
      double[] unit = new double[n];
      unit[j] = 1;
      double[] column = Cholesky.solveAny(curvature, unit);
      for (int i = 0; i < n; i++) {
        covariance[i][j] = column[i];
      }
    }
    Cholesky.inPlace(covariance);
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        covariance[i][j] = 0;
      }
    }
    return covariance;
  }
}
