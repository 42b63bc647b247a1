package io.github.roundstar.ingest.layout.evidence;

import io.github.roundstar.ingest.layout.TimeForm;
import io.github.roundstar.ingest.layout.text.ClockText;
import io.github.roundstar.signal.Quantile;
import java.util.stream.IntStream;

/**
 * The times of the rows as a column tells them, in its own unit; clock times in seconds of the day.
 */
public final class RowTimes {
  private static final int LOOKED_AT = 200;

  /** A gap of so many frames is more than a star lost behind a cloud for a while. */
  private static final double LEAP_STEPS = 20;

  /** A row that comes so many usual steps after the one before lacks others between. */
  private static final double LATE_STEPS = 1.8;

  private static final double DAY_SECONDS = 86_400;

  private final boolean counts;
  private final double[] at;
  private final double step;

  public RowTimes(Column time) {
    this.counts = time.isNumeric();
    this.at =
        counts ? time.numbers : time.cells.stream().mapToDouble(RowTimes::secondOfDay).toArray();
    double[] forward =
        IntStream.range(1, Math.min(LOOKED_AT, time.cells.size()))
            .mapToDouble(this::gapBefore)
            .filter(gap -> gap > 0 && Double.isFinite(gap))
            .toArray();
    this.step = forward.length == 0 ? 1 : Quantile.median(forward);
  }

  private static double secondOfDay(String cell) {
    return ClockText.of(cell, TimeForm.DateOrder.DMY)
        .time()
        .map(t -> (double) t.toSecondOfDay())
        .orElse(Double.NaN);
  }

  /** From the row before to this one; a clock that falls by half a day has passed midnight. */
  public double gapBefore(int row) {
    double gap = at[row] - at[row - 1];
    return !counts && gap < -DAY_SECONDS / 2 ? gap + DAY_SECONDS : gap;
  }

  /** The usual gap. */
  public double step() {
    return step;
  }

  /** Whether a row is no frame after the one before: later, or in a time that begins anew. */
  public boolean isLate(int row) {
    double gap = gapBefore(row);
    return gap > LATE_STEPS * step || gap < 0;
  }

  /** Whether the time leaps before a row, by more than a star lost for a while. */
  public boolean leapsBefore(int row) {
    return gapBefore(row) > LEAP_STEPS * step;
  }
}
