package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What stands around the rows of a sample: names, units, and other lines.
 *
 * @param nameLine index of the line of names; negative if there is none
 * @param nameCells the names
 * @param unitCells units in the line below the names; empty if there is none
 * @param others lines that are no rows, no names and no units
 * @param between those of them after the first row
 * @param names pattern of the line of names
 * @param remark pattern of lines that begin with a sign as rows never do
 * @param runs where runs begin and end
 */
record TableHead(
    int nameLine,
    List<String> nameCells,
    List<String> unitCells,
    List<String> others,
    List<String> between,
    Optional<LinePattern> names,
    Optional<LinePattern> remark,
    RunMarks runs) {
  private static final String SIGNS = "#!%*;>=";
  private static final int LINES_ABOVE = 4;

  static TableHead of(List<String> lines, RowShape shape) {
    int first = shape.rows().get(0);
    int nameAt = -1;
    int unitAt = -1;
    for (int i = first - 1; i >= Math.max(0, first - LINES_ABOVE) && nameAt < 0; i--) {
      List<String> cells = shape.cells(lines.get(i));
      if (shape.delimiter() != Delimiter.FIXED && cells.size() == shape.size() && isWords(cells)) {
        if (areUnits(cells) && unitAt < 0) {
          unitAt = i;
        } else {
          nameAt = i;
        }
      }
    }
    String nameLine = nameAt < 0 ? null : lines.get(nameAt);
    String unitLine = unitAt < 0 ? null : lines.get(unitAt);
    Set<Integer> rows = new HashSet<>(shape.rows());
    List<String> others = new ArrayList<>();
    List<String> between = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (!rows.contains(i)
          && !line.isBlank()
          && !line.equals(nameLine)
          && !line.equals(unitLine)) {
        others.add(line);
        if (i > first) {
          between.add(line);
        }
      }
    }
    return new TableHead(
        nameAt,
        nameAt < 0 ? List.of() : shape.cells(nameLine),
        unitAt < 0 ? List.of() : shape.cells(unitLine),
        others,
        between,
        Optional.ofNullable(nameLine).map(TableHead::beginningOf),
        remark(between),
        RunLines.of(lines, rows, nameLine));
  }

  static LinePattern beginningOf(String line) {
    String text = line.stripLeading();
    return LinePattern.of(
        "^\\s*"
            + LinePattern.quoted(text.substring(0, Math.min(60, text.length())))
                .replace("\t", "\\t"));
  }

  static boolean isWords(List<String> cells) {
    long words =
        cells.stream().filter(c -> !c.isEmpty() && !RowShape.isNumber(c)).distinct().count();
    return words * 3 >= cells.size() * 2L && cells.stream().noneMatch(RowShape::startsAsNumber);
  }

  static boolean areUnits(List<String> cells) {
    long units = cells.stream().filter(cell -> NameWords.unit(cell).isPresent()).count();
    return units * 2 >= cells.stream().filter(c -> !c.isEmpty()).count() && units >= 2;
  }

  /** Whether a line begins as rows never do. */
  static boolean isRemark(String line) {
    return !line.isEmpty() && SIGNS.indexOf(line.charAt(0)) >= 0;
  }

  private static Optional<LinePattern> remark(List<String> between) {
    Set<Character> signs = new TreeSet<>();
    for (String line : between) {
      if (isRemark(line)) {
        signs.add(line.charAt(0));
      }
    }
    if (signs.isEmpty()) {
      return Optional.empty();
    }
    StringBuilder all = new StringBuilder();
    signs.forEach(all::append);
    return Optional.of(LinePattern.of("^[" + all + "]"));
  }

  /** The columns with their values. */
  List<ColumnData> columns(List<String> lines, RowShape shape) {
    List<List<String>> cells = new ArrayList<>();
    for (int c = 0; c < shape.size(); c++) {
      cells.add(new ArrayList<>(shape.rows().size()));
    }
    for (int row : shape.rows()) {
      List<String> fields = shape.cells(lines.get(row));
      for (int c = 0; c < shape.size(); c++) {
        cells.get(c).add(fields.get(c));
      }
    }
    List<ColumnData> columns = new ArrayList<>();
    for (int c = 0; c < shape.size(); c++) {
      String name = c < nameCells.size() ? nameCells.get(c) : "";
      Optional<String> beside =
          c < unitCells.size() ? NameWords.unit(unitCells.get(c)) : Optional.empty();
      String unit = beside.or(() -> new NameWords(name).unit()).orElse("");
      columns.add(new ColumnData(c, name, unit, cells.get(c), shape.decimalComma()));
    }
    return columns;
  }
}
