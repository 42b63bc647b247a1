package io.github.roundstar.pipeline;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;

/** A file cannot be written; nothing was left half written in its place. */
public final class UnwritableOutputException extends Exception {
  private static final long serialVersionUID = 1L;

  UnwritableOutputException(Path file, IOException cause) {
    super(
        file
            + ": cannot be written ("
            + why(cause)
            + "): check permissions and free space, or name another place with --out",
        cause);
  }

  UnwritableOutputException(Path file, String why) {
    super(file + ": cannot be written (" + why + "): name another place with --out");
  }

  private static String why(IOException cause) {
    if (cause instanceof FileAlreadyExistsException) {
      return "a file stands where its folder should be";
    }
    if (cause instanceof AccessDeniedException) {
      return "access is denied";
    }
    boolean told = cause instanceof FileSystemException failure && failure.getReason() != null;
    return told ? ((FileSystemException) cause).getReason() : "the file system refuses it";
  }
}
