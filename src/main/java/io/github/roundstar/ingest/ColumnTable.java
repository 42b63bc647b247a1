package io.github.roundstar.ingest;

import io.github.roundstar.formats.DelimitedTable;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TableColumn;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Where in a row each column of a guide table stands and by what its numbers are multiplied. */
final class ColumnTable {
  private final int[] indices = new int[GuideColumn.values().length];
  private final double[] factors = new double[indices.length];
  private final List<TableColumn> columns;

  private ColumnTable(List<TableColumn> columns) {
    this.columns = columns;
    Arrays.fill(indices, -1);
    Arrays.fill(factors, 1);
  }

  /**
   * Reads the column line of a table.
   *
   * @throws FormatException on an unknown column, a wrong unit, or the want of a required column
   */
  static ColumnTable of(DelimitedTable table, Problems problems) throws FormatException {
    ColumnTable result = new ColumnTable(table.columns());
    refuseOtherDelimiters(table);
    for (int i = 0; i < table.columns().size(); i++) {
      TableColumn column = table.columns().get(i);
      GuideColumn known = known(table.file(), column);
      result.indices[known.ordinal()] = i;
      result.factors[known.ordinal()] = factor(table, column, known, problems);
    }
    result.require(table);
    return result;
  }

  /** A table whose rows are filled by a {@link LayoutRows}, in the model's units. */
  static ColumnTable filled(Set<GuideColumn> columns) {
    ColumnTable result = new ColumnTable(List.of());
    columns.forEach(column -> result.indices[column.ordinal()] = 0);
    return result;
  }

  private static void refuseOtherDelimiters(DelimitedTable table) throws FormatException {
    String first = table.columns().get(0).name();
    if (table.columns().size() == 1
        && (first.contains(";") || first.contains("\t") || first.contains(" "))) {
      throw new FormatException(
          table.file(),
          table.lineNumber(),
          "the column names are not separated by commas",
          "separate names and fields with commas and write decimals with a point, or add an ECSV"
              + " header");
    }
  }

  private static GuideColumn known(String file, TableColumn column) throws FormatException {
    TreeSet<String> names = new TreeSet<>();
    for (GuideColumn known : GuideColumn.values()) {
      if (known.key().equals(column.name())) {
        return known;
      }
      names.add(known.key());
    }
    throw UnknownColumn.of(file, column, names);
  }

  private static double factor(
      DelimitedTable table, TableColumn column, GuideColumn known, Problems problems)
      throws FormatException {
    if (column.unit().isEmpty() || column.unit().get().isBlank()) {
      if (table.isEcsv() && !known.quantity().assumedUnit().isEmpty()) {
        problems.warn(
            column.line(),
            "column "
                + column.name()
                + " has no unit, "
                + known.quantity().assumedUnit()
                + " assumed",
            "add unit: " + known.quantity().assumedUnit());
      }
      return 1;
    }
    Double factor = known.quantity().factors().get(column.unit().get());
    if (factor == null) {
      String expected =
          known.quantity().factors().isEmpty()
              ? "none"
              : String.join(" or ", new TreeSet<>(known.quantity().factors().keySet()));
      throw new FormatException(
          table.file(),
          column.line(),
          "column "
              + column.name()
              + ": found unit '"
              + column.unit().get()
              + "', expected "
              + expected,
          "convert the column, or correct its unit");
    }
    return factor;
  }

  private void require(DelimitedTable table) throws FormatException {
    for (GuideColumn needed :
        List.of(GuideColumn.TIME, GuideColumn.RA_OFFSET, GuideColumn.DEC_OFFSET)) {
      if (!has(needed) && !(needed == GuideColumn.TIME && has(GuideColumn.UTC))) {
        throw new FormatException(
            table.file(),
            table.lineNumber(),
            "no column " + (needed == GuideColumn.TIME ? "time or utc" : needed.key()),
            "add the column; time (or utc), ra_offset and dec_offset are needed");
      }
    }
  }

  boolean has(GuideColumn column) {
    return index(column) >= 0;
  }

  /** Place in the row; negative where the table lacks the column. */
  int index(GuideColumn column) {
    return indices[column.ordinal()];
  }

  /** Factor into the model's unit; NaN for pixels, where the run tells it. */
  double factor(GuideColumn column) {
    return factors[column.ordinal()];
  }

  /** Line that declares a column. */
  long line(GuideColumn column) {
    return columns.get(index(column)).line();
  }

  /** Number of columns. */
  int size() {
    return columns.size();
  }

  /** Name of the column at a place. */
  String name(int index) {
    return columns.get(index).name();
  }
}
