package io.github.roundstar.ingest.layout;

import io.github.roundstar.signal.Quantile;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/** Numbers that may stand for a star that was not measured: both offsets 0, or one far value. */
final class DoubtfulValues {
  private static final int OFTEN = 5;
  private static final double SHARE = 0.01;
  private static final double FAR = 30;

  private DoubtfulValues() {}

  /** Asks about such values. */
  static void ask(Map<Meaning, ColumnData> columns, List<Decision> decisions) {
    boolean camera = columns.containsKey(Meaning.X_OFFSET);
    ColumnData one = columns.get(camera ? Meaning.X_OFFSET : Meaning.RA_OFFSET);
    ColumnData two = columns.get(camera ? Meaning.Y_OFFSET : Meaning.DEC_OFFSET);
    int zeros = 0;
    Map<Double, Integer> far = new HashMap<>();
    double usual = usual(one.finite());
    for (int i = 0; i < one.numbers.length; i++) {
      zeros += one.numbers[i] == 0 && two.numbers[i] == 0 ? 1 : 0;
      if (usual > 0 && Math.abs(one.numbers[i]) > FAR * usual && one.numbers[i] == two.numbers[i]) {
        far.merge(one.numbers[i], 1, Integer::sum);
      }
    }
    if (zeros > Math.max(OFTEN, SHARE * one.numbers.length) && usual > 0) {
      open(one, zeros, 0, decisions);
    }
    far.forEach(
        (value, count) -> {
          if (count >= OFTEN) {
            open(one, count, value, decisions);
          }
        });
  }

  private static double usual(double[] values) {
    double[] sizes = Arrays.stream(values).map(Math::abs).filter(v -> v > 0).toArray();
    return sizes.length == 0 ? 0 : Quantile.median(sizes);
  }

  private static void open(ColumnData column, int rows, double value, List<Decision> decisions) {
    String written =
        column.cells.get(
            IntStream.range(0, column.numbers.length)
                .filter(i -> column.numbers[i] == value)
                .findFirst()
                .orElse(0));
    decisions.add(
        Decision.open(
            "frames without a star",
            String.format(
                Locale.ROOT,
                "both offsets are %s in %d rows, as if nothing was measured",
                written,
                rows),
            "missing = \"" + written + "\"   # in both offset columns, if so"));
  }
}
