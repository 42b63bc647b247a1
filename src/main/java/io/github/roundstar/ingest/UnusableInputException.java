package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import java.io.IOException;
import java.nio.file.Path;

/** An input file that cannot be used; the message is {@code file:line: what: how to mend it}. */
public final class UnusableInputException extends Exception {
  private static final long serialVersionUID = 1L;

  UnusableInputException(FormatException cause) {
    super(cause.getMessage(), cause);
  }

  UnusableInputException(Path path, IOException cause) {
    this(FormatException.unreadable(path, cause));
  }
}
