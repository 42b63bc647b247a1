package io.github.roundstar.ingest.layout;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What most lines hold in each field. */
final class RowLooks {
  private static final int LOOKED_AT = 2000;
  private static final double MOST_ODD = 0.34;
  private final int[][] counts;
  private static final double USUAL = 0.02;
  private static final int MOST_CLOCKS = 50;
  private final Set<String> clocks = new HashSet<>();
  private int looked;
  private int commas;
  private int points;

  RowLooks(List<List<String>> all, int size) {
    counts = new int[size][Look.values().length];
    int step = Math.max(1, all.size() / LOOKED_AT);
    for (int r = 0; r < all.size(); r += step) {
      if (Look.worth(all.get(r)) > 0) {
        looked++;
        for (int c = 0; c < size; c++) {
          String cell = all.get(r).get(c);
          Look look = Look.of(cell);
          counts[c][look.ordinal()]++;
          if (look == Look.NUMBER || look == Look.LETTERED) {
            commas += cell.indexOf(',') >= 0 ? 1 : 0;
            points += cell.indexOf('.') >= 0 ? 1 : 0;
          }
        }
      }
    }
  }

  /** The look of a field, found without patterns where it is a plain number. */
  private Look quickLook(String cell) {
    if (!Look.startsAsNumber(cell)) {
      return Look.of(cell);
    }
    if (Numbers.of(cell, true).isPresent()) {
      return Look.NUMBER;
    }
    String form = form(cell);
    if (clocks.contains(form)) {
      return Look.CLOCK;
    }
    Look look = Look.of(cell);
    if (look == Look.CLOCK && clocks.size() < MOST_CLOCKS) {
      clocks.add(form);
    }
    return look;
  }

  /** A field with all digits alike. */
  private static String form(String cell) {
    char[] signs = cell.toCharArray();
    for (int i = 0; i < signs.length; i++) {
      signs[i] = signs[i] >= '0' && signs[i] <= '9' ? '0' : signs[i];
    }
    return new String(signs);
  }

  boolean decimalComma() {
    return commas > points;
  }

  /** Whether a word names a column, or its unit, rather than a star that was not measured. */
  private static boolean names(String word) {
    return Words.unit(word).isPresent()
        || Words.of(word).hasAny("pulse", "offset", "ra", "dec", "x", "y", "time", "flux", "snr");
  }

  boolean fits(List<String> cells) {
    int odd = 0;
    int expected = 0;
    int numbers = 0;
    int empty = 0;
    String lost = "";
    for (int c = 0; c < counts.length; c++) {
      int[] column = counts[c];
      if (column[Look.CLOCK.ordinal()] > Splitting.CLEAN * looked
          && !quickLook(cells.get(c)).isNumeric()) {
        return false;
      }
      int numeric =
          column[Look.NUMBER.ordinal()]
              + column[Look.CLOCK.ordinal()]
              + column[Look.LETTERED.ordinal()];
      if (numeric > column[Look.WORD.ordinal()] + column[Look.JUNK.ordinal()]) {
        expected++;
        Look look = quickLook(cells.get(c));
        boolean usual = look.isNumeric() && column[look.ordinal()] >= USUAL * numeric;
        if (look == Look.WORD && lost.isEmpty() && names(cells.get(c))) {
          return false;
        }
        boolean same = look == Look.WORD && (lost.isEmpty() || lost.equals(cells.get(c)));
        lost = same ? cells.get(c) : lost; // one word for all that was not measured
        odd += usual || look == Look.NONE || same && numbers > 0 ? 0 : 1;
        numbers += usual ? 1 : 0;
        empty += look == Look.NONE ? 1 : 0;
      }
    }
    boolean remark = !lost.isEmpty() && numbers == 1 && empty >= expected - 2;
    return numbers > 0
        && !remark
        && odd <= MOST_ODD * expected
        && (odd == 0 || numbers * 2 >= expected);
  }
}
