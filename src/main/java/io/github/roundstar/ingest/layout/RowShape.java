package io.github.roundstar.ingest.layout;

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
record RowShape(
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
  static Optional<RowShape> of(List<String> lines) {
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
    RowLooks looks = new RowLooks(all, way.size());
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
  List<String> cells(String line) {
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

  /** The same with some of its rows. */
  RowShape withRows(List<Integer> kept) {
    return new RowShape(delimiter, widths, decimalComma, keys, size, kept, lead, marked, runnerUp);
  }

  /**
   * The same, its rows told by the word that all of them begin with, where other tables lack it.
   */
  RowShape marked(List<String> lines) {
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
}
