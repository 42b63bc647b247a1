package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** An input file that cannot be used; the message is {@code file:line: what: how to mend it}. */
public final class UnusableInputException extends Exception {
  private static final long serialVersionUID = 1L;

  UnusableInputException(FormatException cause) {
    super(cause.getMessage(), cause);
  }

  UnusableInputException(Path path, IOException cause) {
    super(
        FormatException.located(
            String.valueOf(path.getFileName()),
            0,
            cause instanceof NoSuchFileException ? "no such file" : "the file cannot be read",
            "check the path, and that you may read the file"),
        cause);
  }
}
