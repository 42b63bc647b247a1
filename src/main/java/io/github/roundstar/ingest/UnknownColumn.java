package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.NearestName;
import io.github.roundstar.formats.TableColumn;
import java.util.Collection;
import java.util.TreeSet;

/** What is said of a column whose name no table of this kind has. */
final class UnknownColumn {
  private UnknownColumn() {}

  static FormatException of(String file, TableColumn column, Collection<String> known) {
    return new FormatException(
        file,
        column.line(),
        "unknown column '"
            + column.name()
            + "', the nearest known one is "
            + NearestName.of(column.name(), new TreeSet<>(known)).orElseThrow(),
        "rename the column or remove it");
  }
}
