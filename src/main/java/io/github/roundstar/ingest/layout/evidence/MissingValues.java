package io.github.roundstar.ingest.layout.evidence;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.text.Numbers;
import io.github.roundstar.signal.Quantile;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntPredicate;

/**
 * What stands in the offsets' fields for a star that was not measured: words, and numbers that a
 * sentence explains or that stand alone, the same each time and far from all others.
 */
public final class MissingValues {
  /** Both offsets zero in more rows than these are no chance. */
  private static final int OFTEN = 5;

  private static final double SHARE = 0.01;

  /** Farther than any gust or dither takes the star, in medians. */
  private static final double FAR = 30;

  /** Numbers that people write for nothing. */
  private static final String NINES =
      "[+\u2212-]?(?:9{2,6}(?:[.,][09]*)?|1e\\+?[0-9]+|32767|65535)";

  private MissingValues() {}

  /** Finds them, takes them out of the columns' numbers, and gives them by column. */
  public static Map<Column, Set<String>> find(
      List<Column> columns, LogSentences text, List<Decision> decisions) {
    Map<Column, Set<String>> missing = new IdentityHashMap<>();
    for (Column column : columns) {
      if (column.isNumeric()) {
        Set<String> found = sentinels(column, text);
        if (!found.isEmpty()) {
          missing.put(column, found);
          for (int i = 0; i < column.numbers.length; i++) {
            column.numbers[i] =
                found.contains(column.cells.get(i)) ? Double.NaN : column.numbers[i];
          }
          column.changed();
          decisions.add(
              Decision.certain(
                  column.called(), found + " means no value", "told, or alone and far from all"));
        }
      }
    }
    return missing;
  }

  private static Set<String> sentinels(Column column, LogSentences text) {
    Set<String> found = new LinkedHashSet<>();
    double middle = column.median();
    double usual = usual(Arrays.stream(column.finite()).map(v -> v - middle).toArray());
    boolean falls = column.rising() < 0.9; // else it is a time
    if (!falls || column.largest() <= FAR * usual && !text.explainsMissing()) {
      return found;
    }
    Map<String, Integer> far = new TreeMap<>();
    double farthest = 0;
    for (int i = 0; i < column.numbers.length; i++) {
      String cell = column.cells.get(i);
      double size = Math.abs(column.numbers[i] - middle);
      boolean outlying = usual > 0 && size > FAR * usual;
      if (size > 0 && text.saysMissing(cell) && (outlying || isRare(column, cell))) {
        found.add(cell);
      } else if (outlying) {
        far.merge(cell, 1, Integer::sum);
      } else if (size > farthest) {
        farthest = size;
      }
    }
    double next = farthest;
    far.forEach(
        (cell, count) -> {
          double size = Math.abs(Numbers.of(cell, true).orElse(middle) - middle);
          boolean alone = size > 4 * next || size > FAR * usual * 4;
          if ((count >= 2 && alone || cell.matches(NINES) && alone) && isNines(cell, count)) {
            found.add(cell);
          }
        });
    return found;
  }

  private static boolean isNines(String cell, int count) {
    return cell.matches(NINES) || count >= 3;
  }

  private static boolean isRare(Column column, String cell) {
    return column.cells.stream().filter(cell::equals).count() < 0.3 * column.cells.size();
  }

  /**
   * Rows in which both offsets are exactly zero, as if nothing was measured.
   *
   * @param isLost rows in which a word says that the star was lost
   * @param light the star's light, which is missing or zero where nothing was measured
   * @return how a zero is written that stands for no star; empty where none does, or it is asked
   */
  public static Set<String> zeros(
      Column one,
      Column two,
      IntPredicate isLost,
      Optional<Column> light,
      List<Decision> decisions) {
    int zeros = 0;
    int at = -1;
    int lost = 0;
    int dark = 0;
    for (int i = 0; i < one.numbers.length; i++) {
      boolean both = one.numbers[i] == 0 && two.numbers[i] == 0;
      zeros += both ? 1 : 0;
      at = both && at < 0 ? i : at;
      lost += both && isLost.test(i) ? 1 : 0;
      int row = i;
      dark += both && light.filter(c -> !(c.numbers[row] > 0)).isPresent() ? 1 : 0;
    }
    if (lost >= 0.9 * zeros) {
      return Set.of(); // a word in these rows says that nothing was measured
    }
    double usual = Math.max(usual(one.finite()), usual(two.finite()));
    int places =
        Math.max(0, at < 0 ? 0 : one.cells.get(at).replaceAll("^[^.,]*[.,]?", "").length());
    double chance = Math.pow(Math.pow(10, -places) / Math.max(usual, 1e-9), 2);
    boolean many = zeros > Math.max(OFTEN, SHARE * one.numbers.length);
    if (many && usual > 0 && zeros > 3 * chance * one.numbers.length) {
      String written = one.cells.get(at);
      if (dark >= 0.9 * zeros) {
        decisions.add(
            Decision.certain(
                "frames without a star", "offsets of " + written, "the star has no light in them"));
        return new LinkedHashSet<>(List.of(written, two.cells.get(at)));
      }
      decisions.add(
          Decision.open(
              "frames without a star",
              String.format(
                  Locale.ROOT,
                  "both offsets are %s in %d rows, as if nothing was measured",
                  written,
                  zeros),
              "missing = \"" + written + "\"   # in both offset columns, if so"));
    }
    return Set.of();
  }

  private static double usual(double[] values) {
    double[] sizes = Arrays.stream(values).map(Math::abs).filter(v -> v > 0).toArray();
    return sizes.length == 0 ? 0 : Quantile.median(sizes);
  }
}
