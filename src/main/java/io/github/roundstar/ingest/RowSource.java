package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import java.io.IOException;
import java.util.Optional;

/** The rows of one log, whatever its layout. */
interface RowSource {
  /** Goes to the next row; false at the end. */
  boolean next() throws IOException, FormatException;

  /** Puts the current row into {@code row}; false if it cannot be used, which is then counted. */
  boolean take(TableRow row) throws FormatException;

  /** The file's name, without folders. */
  String file();

  /** Line of the current row. */
  long lineNumber();

  /** What broke off the reading, once all rows are read. */
  Optional<String> damage() throws IOException;

  /** SHA-256 of the file as it lies on disk, lower-case hex. */
  String sha256() throws IOException;

  /** Size of the file as it lies on disk. */
  long bytes() throws IOException;

  /** How the rows are laid out, in a few words. */
  String layout();
}
