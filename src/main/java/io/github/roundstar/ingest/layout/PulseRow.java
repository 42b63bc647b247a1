package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.PierSide;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds the row that holds the pulse which answers an offset: the offset's own, or the next. */
final class PulseRow {
  /** What the better row leaves unexplained is at most this share of what the other leaves. */
  private static final double CLEARLY_LESS = 0.6;

  private static final int FEWEST_PULSES = 20;

  private PulseRow() {}

  /** Rows between an offset and the pulse that answers it: 0 or 1. */
  static int lag(PulseSeries series, double[][] pulses, List<Decision> decisions) {
    double[] share = new double[2];
    int rows = 0;
    for (double[] axis : pulses) {
      for (Optional<PierSide> side : series.sides()) {
        PulseAnswer same = series.answer(axis, 0, side);
        PulseAnswer next = series.answer(axis, 1, side);
        share[0] += same.share() * same.rows();
        share[1] += next.share() * same.rows();
        rows += same.rows();
      }
    }
    double best = Math.max(share[0], share[1]) / Math.max(1, rows);
    double other = Math.min(share[0], share[1]) / Math.max(1, rows);
    int lag = share[1] > share[0] ? 1 : 0;
    String because =
        String.format(
            Locale.ROOT,
            "over %d pulses the offset of the same row explains %.0f %% of them, that of the row"
                + " before %.0f %%",
            rows,
            100 * share[0] / Math.max(1, rows),
            100 * share[1] / Math.max(1, rows));
    boolean clear = best >= PulseSeries.ENOUGH_SHARE && 1 - best < CLEARLY_LESS * (1 - other);
    decisions.add(
        clear && rows >= FEWEST_PULSES
            ? Decision.certain("pulse row", lag == 1 ? "next" : "same", because)
            : Decision.open("pulse row", because, "[pulses]\nrow = \"same\"   # or \"next\""));
    return lag;
  }
}
