package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * How the rows of a sample are told and taken apart.
 *
 * @param delimiter what separates fields
 * @param widths widths of fixed fields
 * @param decimalComma whether decimals are written with a comma
 * @param size number of fields of a row
 * @param rows indices of the lines that are rows
 */
record RowShape(
    Delimiter delimiter, List<Integer> widths, boolean decimalComma, int size, List<Integer> rows) {
  private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]*[.,]?[0-9]+([eE][+-]?[0-9]+)?");
  private static final Pattern COMMA = Pattern.compile("[+-]?[0-9]*,[0-9]+");
  private static final int FEWEST_ROWS = 3;
  private static final int FEWEST_FIELDS = 3;

  /** The shape that makes most rows alike; empty where the text holds no table. */
  static Optional<RowShape> of(List<String> lines) {
    RowShape best = null;
    for (Delimiter delimiter :
        List.of(
            Delimiter.SEMICOLON,
            Delimiter.TAB,
            Delimiter.PIPE,
            Delimiter.COMMA,
            Delimiter.BLANKS)) {
      RowShape shape = shape(lines, delimiter, List.of());
      if (shape.rows.size() >= FEWEST_ROWS
          && (best == null || shape.rows.size() > 1.5 * best.rows.size())) {
        best = shape;
      }
    }
    RowShape fixed = fixed(lines);
    boolean ragged =
        best == null || best.delimiter == Delimiter.BLANKS && fixed.rows.size() > best.rows.size();
    if (ragged && fixed.rows.size() >= FEWEST_ROWS) {
      best = fixed;
    }
    return Optional.ofNullable(best);
  }

  private static RowShape shape(List<String> lines, Delimiter delimiter, List<Integer> widths) {
    Map<Integer, Integer> counts = new HashMap<>();
    for (String line : lines) {
      List<String> cells = Cells.of(line, delimiter, widths);
      if (isRow(cells)) {
        counts.merge(cells.size(), 1, Integer::sum);
      }
    }
    int size = 0;
    for (Map.Entry<Integer, Integer> entry : counts.entrySet()) {
      size = size == 0 || entry.getValue() > counts.get(size) ? entry.getKey() : size;
    }
    List<Integer> rows = new ArrayList<>();
    int commas = 0;
    for (int i = 0; i < lines.size(); i++) {
      List<String> cells = Cells.of(lines.get(i), delimiter, widths);
      if (cells.size() == size && isRow(cells)) {
        rows.add(i);
        commas += cells.stream().anyMatch(cell -> COMMA.matcher(cell).matches()) ? 1 : 0;
      }
    }
    return new RowShape(delimiter, widths, commas * 2 > rows.size(), size, rows);
  }

  private static boolean isRow(List<String> cells) {
    if (cells.size() < FEWEST_FIELDS || cells.get(0).isEmpty()) {
      return false;
    }
    long numbers = cells.stream().filter(cell -> startsAsNumber(cell)).count();
    return numbers >= 2 && startsAsNumber(cells.get(0));
  }

  static boolean isNumber(String cell) {
    return cell.length() <= 40 && NUMBER.matcher(cell).matches();
  }

  static boolean startsAsNumber(String cell) {
    int at = !cell.isEmpty() && "+-.,".indexOf(cell.charAt(0)) >= 0 ? 1 : 0;
    return cell.length() > at && Character.isDigit(cell.charAt(at));
  }

  /** Fields that end where all rows have a blank, or where one right-aligned field ends. */
  private static RowShape fixed(List<String> lines) {
    Map<Integer, Integer> lengths = new HashMap<>();
    List<String> likely = new ArrayList<>();
    for (String line : lines) {
      if (line.length() <= 400
          && startsAsNumber(line.strip())
          && Cells.of(line, Delimiter.BLANKS, List.of()).size() >= 2) {
        likely.add(line);
        lengths.merge(line.length(), 1, Integer::sum);
      }
    }
    int longest = lengths.keySet().stream().mapToInt(i -> i).max().orElse(0);
    BitSet ink = new BitSet();
    for (String line : likely) {
      for (int i = 0; i < line.length(); i++) {
        ink.set(i, ink.get(i) || line.charAt(i) != ' ');
      }
    }
    List<Integer> widths = new ArrayList<>();
    int from = 0;
    while (from < longest && ink.nextSetBit(from) >= 0) {
      int end = ink.nextClearBit(ink.nextSetBit(from));
      widths.add(Math.min(end, longest) - from);
      from = end;
    }
    return widths.isEmpty()
        ? new RowShape(Delimiter.FIXED, widths, false, 0, List.of())
        : shape(lines, Delimiter.FIXED, widths);
  }

  List<String> cells(String line) {
    return Cells.of(line, delimiter, widths);
  }
}
