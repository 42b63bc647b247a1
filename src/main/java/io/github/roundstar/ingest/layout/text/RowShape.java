package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.Delimiter;
import io.github.roundstar.ingest.layout.LinePattern;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * How the rows of a sample are told and taken apart: of all ways to split lines, the one under
 * which most lines have the same, clean fields.
 *
 * @param delimiter what separates fields
 * @param widths widths of fixed fields
 * @param decimalComma whether decimals are written with a comma
 * @param keys keys of the fields, where the rows tell them; else empty
 * @param size number of fields of a row
 * @param rows indices of the lines that are rows
 * @param lead words or brackets in front of the fields
 * @param marked pattern of the rows where other lines have as many fields
 * @param runnerUp the next best way to split lines, for people
 */
public record RowShape(
    Delimiter delimiter,
    List<Integer> widths,
    boolean decimalComma,
    List<String> keys,
    int size,
    List<Integer> rows,
    Optional<LinePattern> lead,
    Optional<LinePattern> marked,
    String runnerUp) {
  private static final int FEWEST_ROWS = 3;

  /** The shape that makes most lines alike; empty where the text holds no table. */
  public static Optional<RowShape> of(List<String> lines) {
    return Splitting.of(lines)
        .map(way -> way.delimiter().isKeyed() ? keyed(lines, way) : parted(lines, way))
        .filter(found -> found.rows.size() >= FEWEST_ROWS);
  }

  private static RowShape parted(List<String> lines, Splitting way) {
    List<Integer> like = new ArrayList<>();
    List<List<String>> all = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      List<String> cells = Cells.of(lines.get(i), way.delimiter(), way.widths(), way.lead());
      if (cells.size() == way.size() && Cells.keepWidths(lines.get(i), way.widths())) {
        like.add(i);
        all.add(cells);
      }
    }
    UsualLooks looks = new UsualLooks(all, way.size());
    List<Integer> rows = new ArrayList<>();
    for (int r = 0; r < all.size(); r++) {
      if (looks.fits(all.get(r))) {
        rows.add(like.get(r));
      }
    }
    return new RowShape(
        way.delimiter(),
        way.widths(),
        looks.decimalComma(),
        List.of(),
        way.size(),
        rows,
        way.lead(),
        Optional.empty(),
        way.runnerUp());
  }

  private static RowShape keyed(List<String> lines, Splitting way) {
    Delimiter delimiter = way.delimiter();
    Set<String> core = Splitting.coreKeys(Splitting.compared(lines), delimiter);
    Map<String, Integer> counts = new LinkedHashMap<>();
    List<Integer> rows = new ArrayList<>();
    int commas = 0;
    int points = 0;
    for (int i = 0; i < lines.size(); i++) {
      Map<String, String> fields = Cells.keyed(lines.get(i), delimiter);
      if (Splitting.hasMost(fields, core) && Look.worth(List.copyOf(fields.values())) > 0) {
        rows.add(i);
        for (Map.Entry<String, String> field : fields.entrySet()) {
          counts.merge(field.getKey(), 1, Integer::sum);
          if (rows.size() < 300 && Look.of(field.getValue()) == Look.NUMBER) {
            commas += field.getValue().indexOf(',') >= 0 ? 1 : 0;
            points += field.getValue().indexOf('.') >= 0 ? 1 : 0;
          }
        }
      }
    }
    List<String> keys = new ArrayList<>();
    int few = Math.max(2, rows.size() / 500);
    counts.forEach(
        (key, count) -> {
          if (count >= few) {
            keys.add(key);
          }
        });
    return new RowShape(
        delimiter,
        List.of(),
        commas > points,
        keys,
        keys.size(),
        rows,
        Optional.empty(),
        Optional.empty(),
        way.runnerUp());
  }

  /** The fields of a row, in the order of the keys where it tells them. */
  public List<String> cells(String line) {
    if (!delimiter.isKeyed()) {
      return Cells.of(line, delimiter, widths, lead);
    }
    Map<String, String> fields = Cells.keyed(line, delimiter);
    List<String> cells = new ArrayList<>(keys.size());
    for (String key : keys) {
      cells.add(fields.getOrDefault(key, ""));
    }
    return cells;
  }

  /** Whether a line tells some of the rows' keys and no others: a row in which much is lacking. */
  public boolean hasItsKeys(String line) {
    if (!delimiter.isKeyed() || line.length() > LinePattern.LONGEST_LINE) {
      return false;
    }
    Set<String> own = Cells.keyed(line, delimiter).keySet();
    return own.stream().anyMatch(key -> !key.startsWith("#")) && keys.containsAll(own);
  }

  /** The same with some of its rows. */
  public RowShape withRows(List<Integer> kept) {
    return new RowShape(delimiter, widths, decimalComma, keys, size, kept, lead, marked, runnerUp);
  }

  /**
   * The same, its rows told by the word that all of them begin with, where other tables lack it.
   */
  public RowShape marked(List<String> lines) {
    String word = cells(lines.get(rows.get(0))).get(0);
    boolean letters = !word.isEmpty() && word.chars().allMatch(Character::isLetter);
    if (!letters || word.length() > 12) {
      return this;
    }
    LinePattern mark = LinePattern.of("^\\P{L}*" + word + "(?!\\p{L})");
    boolean all = rows.stream().allMatch(row -> mark.find(lines.get(row)).isPresent());
    Set<Integer> own = new HashSet<>(rows);
    boolean others =
        IntStream.range(0, lines.size())
            .filter(i -> !own.contains(i) && mark.find(lines.get(i)).isEmpty())
            .anyMatch(i -> Look.worth(Cells.of(lines.get(i), delimiter, widths)) > 0);
    return all && others
        ? new RowShape(
            delimiter, widths, decimalComma, keys, size, rows, lead, Optional.of(mark), runnerUp)
        : this;
  }

  /** What most lines hold in each field. */
  private static final class UsualLooks {
    private static final int LOOKED_AT = 2000;
    private static final double MOST_ODD = 0.34;
    private final int[][] counts;
    private static final double USUAL = 0.02;
    private static final int MOST_CLOCKS = 50;
    private final Set<String> clocks = new HashSet<>();
    private int looked;
    private int commas;
    private int points;

    UsualLooks(List<List<String>> all, int size) {
      counts = new int[size][Look.values().length];
      int step = Math.max(1, all.size() / LOOKED_AT);
      for (int r = 0; r < all.size(); r += step) {
        Look[] looks = all.get(r).stream().map(Look::of).toArray(Look[]::new);
        if (Look.worth(looks) > 0) {
          looked++;
          for (int c = 0; c < size; c++) {
            String cell = all.get(r).get(c);
            Look look = looks[c];
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
          || Words.tokens(word).stream()
              .filter(token -> token.length() > 1) // letters with points shorten other words
              .map(Words::of)
              .anyMatch(w -> w.hasAny("pulse", "offset", "ra", "dec", "time", "flux", "snr"));
    }

    private static boolean isShortText(String cell) {
      return cell.length() <= 12 && cell.chars().noneMatch(Character::isDigit);
    }

    boolean fits(List<String> cells) {
      int odd = 0;
      int expected = 0;
      int numbers = 0;
      int empty = 0;
      int words = 0;
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
          boolean text = look == Look.WORD || look == Look.JUNK && isShortText(cells.get(c));
          boolean same = text && (lost.isEmpty() || lost.equals(cells.get(c)));
          lost = same ? cells.get(c) : lost; // one word for all that was not measured
          words += same ? 1 : 0;
          odd += usual || look == Look.NONE || same ? 0 : 1;
          numbers += usual ? 1 : 0;
          empty += look == Look.NONE ? 1 : 0;
        }
      }
      boolean remark = !lost.isEmpty() && numbers == 1 && empty >= expected - 2;
      remark |= words == 1 && names(lost);
      return numbers > 0
          && !remark
          && odd <= MOST_ODD * expected
          && (odd == 0 || numbers * 2 >= expected);
    }
  }
}
