package io.github.roundstar.motion;

import io.github.roundstar.signal.FrequencyGrid;
import io.github.roundstar.signal.Quantile;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What an unsteady line leaves on both sides when a steady one is taken out: power that falls with
 * the square of the distance. It counts as background, so that only what stands out of a line's
 * skirts is another line. A line that runs steadily leaves nothing.
 *
 * @see "Demir, Mehrotra &amp; Roychowdhury (2000), IEEE Trans. Circuits Syst. I 47, 655, for the
 *     spectrum of a sinusoid whose phase wanders"
 */
final class Skirts {
  /** Nearer than this, in resolution elements 1 / T, two lines cannot be told apart. */
  static final double NEAREST = 1.5;

  private static final int RINGS = 3;

  private Skirts() {}

  /**
   * Raises the background to the skirts.
   *
   * @param background in units of what pure wander and noise give; raised in place
   * @param strength strength of each trial frequency
   * @param grid the trial frequencies
   * @param plainMedian median strength of pure wander and noise
   * @param lines frequencies of the lines that were taken out [Hz]
   */
  static void raise(
      double[] background,
      double[] strength,
      FrequencyGrid grid,
      double plainMedian,
      List<Double> lines) {
    double element = SummedSpectrum.OVERSAMPLING * grid.stepHz();
    for (double line : lines) {
      double level = level(strength, grid, line, element) / plainMedian;
      for (int j = 0; j < background.length; j++) {
        double distance = Math.max(1, Math.abs(grid.hertz(j) - line) / element);
        background[j] = Math.max(background[j], level / (distance * distance));
      }
    }
  }

  /**
   * Strength at a distance of one element: the least of what three rings, each twice as wide as the
   * one inside it, say by their medians. Where there is no skirt the innermost ring says next to
   * nothing.
   */
  private static double level(double[] strength, FrequencyGrid grid, double line, double element) {
    double least = Double.POSITIVE_INFINITY;
    double inner = NEAREST;
    for (int ring = 0; ring < RINGS; ring++, inner *= 2) {
      double[] scaled = ring(strength, grid, line, element, inner);
      if (scaled.length > 0) {
        least = Math.min(least, Quantile.median(scaled));
      }
    }
    return Double.isFinite(least) ? least : 0;
  }

  private static double[] ring(
      double[] strength, FrequencyGrid grid, double line, double element, double inner) {
    int reach = (int) Math.ceil(2 * inner * SummedSpectrum.OVERSAMPLING);
    int centre = (int) Math.rint((line - grid.startHz()) / grid.stepHz());
    return IntStream.rangeClosed(
            Math.max(0, centre - reach), Math.min(strength.length - 1, centre + reach))
        .filter(
            j -> {
              double distance = Math.abs(grid.hertz(j) - line) / element;
              return distance >= inner && distance < 2 * inner;
            })
        .mapToDouble(j -> strength[j] * Math.pow((grid.hertz(j) - line) / element, 2))
        .toArray();
  }
}
