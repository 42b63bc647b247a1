package io.github.roundstar.signal;

import java.util.Arrays;

/** Lowest, middle and highest value per column of a chart. Columns without a point are absent. */
public final class Envelope {
  private final double[] x;
  private final double[] min;
  private final double[] median;
  private final double[] max;
  private int columns;

  private Envelope(int most) {
    x = new double[most];
    min = new double[most];
    median = new double[most];
    max = new double[most];
  }

  /**
   * Cuts the range of {@code x} into columns of equal width.
   *
   * @param x positions, ascending, equal ones allowed
   * @param y as many values
   * @param most number of columns, at least 1
   */
  public static Envelope of(double[] x, double[] y, int most) {
    ColumnCut cut = new ColumnCut(x, y, most);
    Envelope envelope = new Envelope(Math.min(most, x.length));
    int to;
    for (int from = 0; from < x.length; from = to) {
      to = cut.end(from);
      double[] column = Arrays.copyOfRange(y, from, to);
      Arrays.sort(column);
      int last = column.length - 1;
      envelope.x[envelope.columns] = cut.middle(from);
      envelope.min[envelope.columns] = column[0];
      envelope.median[envelope.columns] = (column[last / 2] + column[(last + 1) / 2]) / 2;
      envelope.max[envelope.columns] = column[last];
      envelope.columns++;
    }
    return envelope;
  }

  /** Number of columns that hold a point. */
  public int columns() {
    return columns;
  }

  /** Middle of column {@code i}. */
  public double x(int i) {
    return x[i];
  }

  /** Lowest value. */
  public double min(int i) {
    return min[i];
  }

  /** Middle value, or the mean of the two middle ones. */
  public double median(int i) {
    return median[i];
  }

  /** Highest value. */
  public double max(int i) {
    return max[i];
  }
}
