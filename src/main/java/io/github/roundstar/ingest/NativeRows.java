package io.github.roundstar.ingest;

import io.github.roundstar.formats.DelimitedTable;
import io.github.roundstar.formats.FormatException;
import java.io.IOException;
import java.util.Optional;

/** The rows of a guide table. */
record NativeRows(DelimitedTable table) implements RowSource {
  @Override
  public boolean next() throws IOException, FormatException {
    return table.next();
  }

  @Override
  public boolean take(TableRow row) {
    return row.take(table.row());
  }

  @Override
  public String file() {
    return table.file();
  }

  @Override
  public long lineNumber() {
    return table.lineNumber();
  }

  @Override
  public Optional<String> damage() throws IOException {
    return table.damage();
  }

  @Override
  public String sha256() throws IOException {
    return table.sha256();
  }

  @Override
  public long bytes() throws IOException {
    return table.bytes();
  }

  @Override
  public String layout() {
    return table.isEcsv() ? "guide-table/ecsv" : "guide-table/csv";
  }
}
