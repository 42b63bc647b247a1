package io.github.roundstar.motion;

import io.github.roundstar.signal.FrequencyGrid;
import io.github.roundstar.signal.Quantile;
import java.util.Arrays;

/**
 * What a whitened spectrum still slopes: a running median over an octave either side, in units of
 * the median that pure wander and noise would give. Never below 1, so that it can only make a claim
 * weaker; lines hardly move a median.
 */
final class LocalBackground {
  /** Half width of the window as a factor of the frequency. */
  private static final double OCTAVE = 2;

  /** Fewest independent frequencies on either side. */
  private static final int FEWEST_EACH_SIDE = 12;

  private static final int MOST_IN_WINDOW = 400;
  private static final double NODE_RATIO = 1.2;

  private LocalBackground() {}

  /**
   * The background at every trial frequency.
   *
   * @param strength strength of each trial frequency
   * @param grid the trial frequencies, {@link SummedSpectrum#OVERSAMPLING} per resolution element
   * @param plainMedian median strength of pure wander and noise
   */
  static double[] of(double[] strength, FrequencyGrid grid, double plainMedian) {
    double[] background = new double[strength.length];
    int node = 0;
    double atNode = level(strength, grid, 0) / plainMedian;
    while (node < strength.length) {
      int next =
          Math.max(
              node + 1, (int) ((grid.hertz(node) * NODE_RATIO - grid.startHz()) / grid.stepHz()));
      int last = Math.min(next, strength.length - 1);
      double atNext = level(strength, grid, last) / plainMedian;
      for (int j = node; j < Math.min(next, strength.length); j++) {
        double share = (j - node) / (double) (next - node);
        background[j] = Math.max(1, atNode + share * (atNext - atNode));
      }
      node = next;
      atNode = atNext;
    }
    return background;
  }

  private static double level(double[] strength, FrequencyGrid grid, int centre) {
    int least = FEWEST_EACH_SIDE * SummedSpectrum.OVERSAMPLING;
    double hertz = grid.hertz(centre);
    int below = (int) Math.max(least, hertz * (1 - 1 / OCTAVE) / grid.stepHz());
    int above = (int) Math.max(least, hertz * (OCTAVE - 1) / grid.stepHz());
    int from = Math.max(0, centre - below);
    int to = Math.min(strength.length, centre + above + 1);
    int count = Math.min(to - from, MOST_IN_WINDOW);
    double[] window = new double[count];
    Arrays.setAll(window, i -> strength[from + (int) ((long) i * (to - from) / count)]);
    return Quantile.median(window);
  }
}
