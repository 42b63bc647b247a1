package io.github.roundstar.signal;

import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/**
 * Sums over uneven samples of c exp(2&pi;ijx) for all j at once: each sample is spread onto an even
 * grid, whose FFT is the sums.
 *
 * <p>Press and Rybicki spread by a Lagrange polynomial. We spread by a Gaussian and divide its
 * transform out afterwards: the same accuracy then needs a grid four times smaller.
 *
 * @see "Press &amp; Rybicki (1989), ApJ 338, 277"
 * @see "Greengard &amp; Lee (2004), SIAM Review 46, 443, for the Gaussian"
 */
final class Extirpolation {
  /** Cells to either side; the error is about exp(-pi REACH (1 - 1 / (2 oversampling))). */
  private static final int REACH = 11;

  private static final double LEAST_OVERSAMPLING = 1.5;

  private final int count;
  private final int cells;
  private final double decay;
  private final double[] falloff = new double[2 * REACH];

  /** For sums at {@code count} integers j, from -count/2 upward. */
  Extirpolation(int count) {
    this.count = count;
    int least = (int) Math.ceil(Math.max(LEAST_OVERSAMPLING * count, 4 * REACH));
    this.cells = Integer.highestOneBit(least - 1) << 1;
    this.decay = Math.PI / REACH * (1 - count / (2.0 * cells));
    for (int l = 0; l < falloff.length; l++) {
      double distance = l - REACH + 1;
      falloff[l] = Math.exp(-decay * distance * distance);
    }
  }

  /**
   * The sums.
   *
   * @param turns x of each sample [turns]
   * @param amplitudes real parts of c of the samples, then imaginary parts
   * @return real parts, then imaginary parts; element i belongs to j = i - count/2
   */
  double[][] sums(double[] turns, double[][] amplitudes) {
    double[][] grid = new double[2][cells];
    for (int i = 0; i < turns.length; i++) {
      spread(grid, turns[i], amplitudes[0][i], amplitudes[1][i]);
    }
    FastFourierTransformer.transformInPlace(grid, DftNormalization.STANDARD, TransformType.FORWARD);
    double[][] sums = new double[2][count];
    for (int i = 0; i < count; i++) {
      int j = i - count / 2;
      double u = Math.PI * j / cells;
      double scale = Math.sqrt(decay / Math.PI) * Math.exp(u * u / decay);
      sums[0][i] = scale * grid[0][-j & (cells - 1)];
      sums[1][i] = scale * grid[1][-j & (cells - 1)];
    }
    return sums;
  }

  private void spread(double[][] grid, double turns, double real, double imaginary) {
    double position = cells * (turns - Math.floor(turns));
    double whole = Math.floor(position);
    double rest = position - whole;
    // exp(-d (rest - l)^2) for all cells l from two exponentials.
    double ratio = Math.exp(2 * decay * rest);
    double weight = Math.exp(-decay * rest * (rest + 2 * (REACH - 1)));
    int cell = (int) whole - REACH + 1;
    for (int l = 0; l < falloff.length; l++) {
      double share = weight * falloff[l];
      int at = cell + l & (cells - 1);
      grid[0][at] += share * real;
      grid[1][at] += share * imaginary;
      weight *= ratio;
    }
  }
}
