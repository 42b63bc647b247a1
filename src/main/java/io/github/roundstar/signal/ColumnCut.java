package io.github.roundstar.signal;

/** Cuts points with ascending x into columns of equal width, for charts. */
final class ColumnCut {
  private final double[] x;
  private final int columns;

  ColumnCut(double[] x, double[] y, int columns) {
    Check.sameLength("y", y, x.length);
    Check.finite("x", x);
    Check.finite("y", y);
    Check.atLeast("number of columns", columns, 1);
    for (int i = 1; i < x.length; i++) {
      if (x[i] < x[i - 1]) {
        throw new IllegalArgumentException(
            "x [" + i + "] = " + x[i] + " is below [" + (i - 1) + "] = " + x[i - 1]);
      }
    }
    this.x = x;
    this.columns = columns;
  }

  /** First point after those that share a column with point {@code from}. */
  int end(int from) {
    int column = column(from);
    int to = from + 1;
    while (to < x.length && column(to) == column) {
      to++;
    }
    return to;
  }

  /** Middle of the column that holds point {@code i}. */
  double middle(int i) {
    return x[0] + (column(i) + 0.5) * (x[x.length - 1] - x[0]) / columns;
  }

  private int column(int i) {
    double span = x[x.length - 1] - x[0];
    return span > 0 ? (int) Math.min(columns - 1, columns * ((x[i] - x[0]) / span)) : 0;
  }
}
