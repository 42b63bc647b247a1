package io.github.roundstar.formats;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A table of delimited text, row by row: ECSV 1.0 if the first line says so, else plain CSV
 * (commas, one line of column names, no units). Blank lines and lines that begin with {@code #} are
 * no rows.
 */
public final class DelimitedTable implements Closeable {
  /** Most columns. */
  public static final int MOST_COLUMNS = 1000;

  private final TextSource source;
  private final Optional<EcsvHeader> header;
  private final List<TableColumn> columns;
  private final Row row;

  private DelimitedTable(TextSource source) throws IOException, FormatException {
    this.source = source;
    if (!nextLine(false)) {
      throw new FormatException(
          source.file(),
          0,
          source.damage().orElse("the file is empty"),
          "give the log as the guider wrote it");
    }
    boolean commented = source.line().startsWith("#");
    header = commented ? Optional.of(EcsvHeader.read(source)) : Optional.empty();
    if (commented && !nextLine(true)) {
      throw new FormatException(
          source.file(),
          source.lineNumber(),
          "the file ends before the line of column names",
          "write the column names and the rows below the header");
    }
    List<String> names = names();
    columns = header.isPresent() ? declared(names) : plain(names);
    refuseRepeated();
    row = new Row(delimiter(), columns.size());
  }

  /**
   * Opens a table and reads its header.
   *
   * @throws FormatException if it has no usable header
   */
  public static DelimitedTable open(Path path) throws IOException, FormatException {
    TextSource source = TextSource.open(path, TextEncoding.ofMark(TextSource.head(path, 2)));
    try {
      return new DelimitedTable(source);
    } catch (IOException | FormatException | RuntimeException e) {
      source.close();
      throw e;
    }
  }

  private boolean nextLine(boolean skipComments) throws IOException, FormatException {
    while (source.next()) {
      if (!isBlank() && !(skipComments && isComment())) {
        return true;
      }
    }
    return false;
  }

  private boolean isComment() {
    return source.from() < source.to() && source.buffer()[source.from()] == '#';
  }

  private boolean isBlank() {
    for (int i = source.from(); i < source.to(); i++) {
      byte b = source.buffer()[i];
      if (b != ' ' && b != '\t') {
        return false;
      }
    }
    return true;
  }

  private char delimiter() {
    return header.map(EcsvHeader::delimiter).orElse(',');
  }

  private List<String> names() throws FormatException {
    source.line();
    Row names = new Row(delimiter(), MOST_COLUMNS);
    names.take(source);
    if (names.fault().isPresent()) {
      throw fault(names.fault().get().what(), names.fault().get().remedy());
    }
    if (names.size() > MOST_COLUMNS) {
      throw fault(names.size() + " columns", "keep at most " + MOST_COLUMNS + " columns");
    }
    List<String> result = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      result.add(names.text(i));
    }
    return result;
  }

  private List<TableColumn> plain(List<String> names) {
    return names.stream()
        .map(name -> new TableColumn(name, Optional.empty(), source.lineNumber()))
        .toList();
  }

  private List<TableColumn> declared(List<String> names) throws FormatException {
    List<TableColumn> declared = header.orElseThrow().columns();
    List<String> expected = declared.stream().map(TableColumn::name).toList();
    if (!names.equals(expected)) {
      throw fault(
          "found the columns " + names + ", but the header declares " + expected,
          "make the line of column names agree with the header, in the same order and with the"
              + " delimiter of the header");
    }
    return declared;
  }

  private void refuseRepeated() throws FormatException {
    Set<String> seen = new HashSet<>();
    for (TableColumn column : columns) {
      if (!seen.add(column.name())) {
        throw new FormatException(
            file(),
            column.line(),
            "the column " + column.name() + " is there twice",
            "remove or rename one of the two");
      }
    }
  }

  private FormatException fault(String what, String remedy) {
    return new FormatException(source.file(), source.lineNumber(), what, remedy);
  }

  /** Goes to the next row; false at the end. */
  public boolean next() throws IOException, FormatException {
    if (!nextLine(true)) {
      return false;
    }
    row.take(source);
    return true;
  }

  /** The current row; the same object every time. */
  public Row row() {
    return row;
  }

  /** Whether the table has an ECSV header, and with it units and meta data. */
  public boolean isEcsv() {
    return header.isPresent();
  }

  /** The columns in order, each name once. */
  public List<TableColumn> columns() {
    return columns;
  }

  /** The header's meta data, always a map; empty for plain CSV. */
  public HeaderNode meta() {
    return header.map(EcsvHeader::meta).orElseGet(() -> HeaderNode.map(1, Map.of()));
  }

  /** Keys of the header, with their lines, that ECSV does not define. */
  public List<HeaderNode> unknownHeaderKeys() {
    return header.map(EcsvHeader::unknown).orElse(List.of());
  }

  /** The file's name, without folders. */
  public String file() {
    return source.file();
  }

  /** Line of the column names before the first row, then of the current row. */
  public long lineNumber() {
    return source.lineNumber();
  }

  /** What broke off the reading of a packed file, once all rows are read. */
  public Optional<String> damage() throws IOException {
    return source.damage();
  }

  /** SHA-256 of the file as it lies on disk, lower-case hex. */
  public String sha256() throws IOException {
    return source.sha256();
  }

  /** Size of the file as it lies on disk. */
  public long bytes() throws IOException {
    return source.bytes();
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
