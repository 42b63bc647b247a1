package io.github.roundstar.ingest.layout.evidence;

import io.github.roundstar.ingest.layout.text.ColumnNames;
import io.github.roundstar.ingest.layout.text.RowShape;
import io.github.roundstar.ingest.layout.text.TableHead;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The columns of a table, with the names, the units and the words beside them. */
public final class Columns {
  private Columns() {}

  /** Words of columns in rows that stand under names in another order. */
  private static void takeWordsElsewhere(
      TableHead head, List<String> lines, RowShape shape, List<Column> columns) {
    List<String> order = head.nameCells();
    Set<Integer> own = new HashSet<>(shape.rows());
    for (int i = shape.rows().get(0);
        head.byName() && head.nameLine() >= 0 && i < lines.size();
        i++) {
      String line = lines.get(i);
      if (own.contains(i) || line.length() > 4000 || shape.delimiter().isKeyed()) {
        continue;
      }
      if (TableHead.isNames(lines, i, shape, head.nameCells())) {
        order = ColumnNames.names(lines, i, shape);
      } else if (!order.equals(head.nameCells())) {
        List<String> cells = shape.cells(line);
        for (int c = 0; c < cells.size() && cells.size() == order.size(); c++) {
          int at = head.nameCells().indexOf(order.get(c));
          if (at >= 0 && !order.get(c).isEmpty()) {
            columns.get(at).holdsElsewhere(cells.get(c));
          }
        }
      }
    }
  }

  /** The columns with their values. */
  public static List<Column> of(TableHead head, List<String> lines, RowShape shape) {
    int size = shape.size();
    List<List<String>> cells = new ArrayList<>();
    for (int c = 0; c < size; c++) {
      cells.add(new ArrayList<>(shape.rows().size()));
    }
    for (int row : shape.rows()) {
      List<String> fields = shape.cells(lines.get(row));
      for (int c = 0; c < size; c++) {
        cells.get(c).add(fields.get(c));
      }
    }
    List<Column> columns = new ArrayList<>();
    int nameless = 0;
    String before = "";
    for (int c = 0; c < size; c++) {
      String name = c < head.nameCells().size() ? head.nameCells().get(c) : "";
      String unit =
          c < head.unitCells().size() ? Words.unit(head.unitCells().get(c)).orElse("") : "";
      boolean keyless = shape.delimiter().isKeyed() && shape.keys().get(c).startsWith("#");
      nameless = keyless ? Integer.parseInt(shape.keys().get(c).substring(1)) : nameless;
      Column column =
          new Column(
              keyless ? nameless : c + 1,
              name,
              head.byName() && !name.isEmpty(),
              unit,
              cells.get(c),
              shape.decimalComma());
      String word = column.onlyWord();
      if (name.isEmpty() && !columns.isEmpty()) {
        columns.get(columns.size() - 1).unitBehind(column.unitWord());
      }
      boolean words = !word.isEmpty() && Words.unit(word).isEmpty();
      if (head.nameCells().isEmpty() && !before.isEmpty() && !words) {
        column.describe(before);
      }
      before = words ? (before + " " + word).strip() : column.numeric > 0 ? "" : before;
      columns.add(column);
    }
    columns.forEach(column -> column.pairWith(columns));
    takeWordsElsewhere(head, lines, shape, columns);
    return columns;
  }
}
