package io.github.roundstar.stars;

import io.github.roundstar.signal.Quantile;
import java.util.Arrays;

/** Which pixels of a sensor belong to the channel that is measured. */
public enum Sampling {
  /** Every pixel: a monochrome sensor, or a channel that was separated before. */
  ALL,
  /** Green pixels are those whose column and row, from 0, add up to an even number. */
  EVEN,
  /** Green pixels are those whose column and row add up to an odd number. */
  ODD;

  private static final int MOST_SAMPLES = 4000;

  boolean takes(int x, int y) {
    return this == ALL || ((x + y) & 1) == (this == ODD ? 1 : 0);
  }

  /**
   * Finds the green pixels of a mosaic from the image itself: the two greens of a cell see the same
   * sky, red and blue do not. Where the levels do not tell, the word of the header counts.
   *
   * @param pattern the cell's four colours row by row, such as RGGB
   */
  public static Sampling green(int width, int height, float[] pixels, String pattern) {
    Sampling stated = pattern.length() == 4 && pattern.charAt(0) == 'G' ? EVEN : ODD;
    double[] level = new double[4];
    double[] error = new double[4];
    for (int cell = 0; cell < 4; cell++) {
      double[] values = sample(width, height, pixels, cell & 1, cell >> 1);
      if (values.length == 0) {
        return stated;
      }
      level[cell] = Quantile.median(values);
      double spread = Quantile.of(values, 0.5) - Quantile.of(values, 0.16);
      error[cell] = 1.2533 * spread / Math.sqrt(values.length);
    }
    double even = Math.abs(level[0] - level[3]);
    double odd = Math.abs(level[1] - level[2]);
    double doubt = 5 * Math.hypot(Math.hypot(error[0], error[3]), Math.hypot(error[1], error[2]));
    return Math.abs(even - odd) <= doubt ? stated : even < odd ? EVEN : ODD;
  }

  private static double[] sample(int width, int height, float[] pixels, int fromX, int fromY) {
    int cells = (width / 2) * (height / 2);
    int stride = Math.max(1, cells / MOST_SAMPLES);
    double[] values = new double[cells / stride + 1];
    int n = 0;
    for (int cell = 0; cell < cells; cell += stride) {
      int x = 2 * (cell % (width / 2)) + fromX;
      int y = 2 * (cell / (width / 2)) + fromY;
      float value = pixels[y * width + x];
      if (Float.isFinite(value)) {
        values[n++] = value;
      }
    }
    return Arrays.copyOf(values, n);
  }
}
