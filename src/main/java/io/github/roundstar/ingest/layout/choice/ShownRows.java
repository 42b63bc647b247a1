package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.evidence.PulseColumns;
import io.github.roundstar.ingest.layout.evidence.RowTimes;
import io.github.roundstar.signal.Quantile;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * What the rows themselves show of what happens: where nothing was measured, where the star jumps,
 * where pulses are sent. Words are checked against it.
 */
final class ShownRows {
  /** How many times farther off than usual the star is after a dither. */
  private static final double JUMP = 3;

  /** A pause has fewer pulses than this share of what is usual. */
  private static final double PAUSED = 0.5;

  private final double[] size;
  private final boolean[] late;
  private final boolean[] pushed;
  private final double usual;
  private final double pushedShare;

  /**
   * Rows of a choice of columns.
   *
   * @param time the column of times
   */
  ShownRows(ColumnChoice.Choice choice, Column time) {
    double[] one = choice.offsets()[0].numbers;
    double[] two = choice.offsets()[1].numbers;
    this.size = new double[one.length];
    this.late = new boolean[one.length];
    this.pushed = new boolean[one.length];
    RowTimes times = new RowTimes(time);
    for (int i = 0; i < size.length; i++) {
      size[i] = Math.hypot(one[i], two[i]);
      late[i] = i > 0 && times.isLate(i);
      for (PulseColumns p : choice.pulses()) {
        pushed[i] |= Double.isFinite(p.series()[i]) && p.series()[i] != 0;
      }
    }
    this.usual = medianSize(i -> true);
    this.pushedShare = pushedShare(IntStream.range(0, size.length).toArray());
  }

  int count() {
    return size.length;
  }

  boolean isMissing(int row) {
    return Double.isNaN(size[row]);
  }

  /** Whether nothing was measured in a row, or rows are lacking before it. */
  boolean isBroken(int row) {
    return isMissing(row) || late[row];
  }

  /** Whether so many times farther off than usual is a jump; one case alone must be clearer. */
  static boolean isFar(double ratio, boolean alone) {
    return ratio > (alone ? 2 : 1) * JUMP;
  }

  /** Whether the star is suddenly far off; one case alone must be clearer than several. */
  boolean jumps(int row, boolean alone) {
    return isFar(size[row] / usual, alone)
        && !late[row]
        && (row == 0 || Double.isNaN(size[row - 1]) || size[row] > 2 * size[row - 1]);
  }

  /** Median distance from the set point in some rows; NaN where none of them was measured. */
  double medianSize(IntPredicate rows) {
    double[] some =
        IntStream.range(0, size.length)
            .filter(i -> rows.test(i) && Double.isFinite(size[i]))
            .mapToDouble(i -> size[i])
            .toArray();
    return some.length == 0 ? Double.NaN : Quantile.median(some);
  }

  /** How many times farther off than in all rows the star is in some. */
  double ratio(IntPredicate rows) {
    return medianSize(rows) / usual;
  }

  private double pushedShare(int[] rows) {
    long measured = Arrays.stream(rows).filter(i -> !isMissing(i)).count();
    return Arrays.stream(rows).filter(i -> !isMissing(i) && pushed[i]).count()
        / (double) Math.max(1, measured);
  }

  /** Whether pulses tell a pause from guiding. */
  boolean showPauses() {
    return pushedShare > 0.2;
  }

  /** Whether guiding goes on in some rows: they are measured, and pulses are sent as elsewhere. */
  boolean goesOn(List<Integer> rows) {
    int[] measured = rows.stream().mapToInt(i -> i).filter(i -> !isMissing(i)).toArray();
    return measured.length >= 3 && pushedShare(measured) > PAUSED * pushedShare;
  }
}
