package io.github.roundstar.pipeline;

import java.io.IOException;
import java.nio.file.Path;

/** A file cannot be written; nothing was left half written in its place. */
public final class UnwritableOutputException extends Exception {
  private static final long serialVersionUID = 1L;

  UnwritableOutputException(Path file, IOException cause) {
    super(
        file
            + ": cannot be written ("
            + cause.getClass().getSimpleName()
            + "): check permissions and free space, or name another place with --out",
        cause);
  }
}
