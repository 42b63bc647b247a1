package io.github.roundstar.formats;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;

/**
 * A file that cannot be read as what it claims to be. The message is a place that an editor can
 * open, what was found, and how to mend it: {@code file:line: what: remedy}, or {@code file: what:
 * remedy} where there is no line; what is wrong with a key begins with the key.
 */
public final class FormatException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String file;
  private final long line;
  private final String what;
  private final String remedy;

  /**
   * A fault at a place.
   *
   * @param file file name without folders
   * @param line line from 1, or 0 where the fault has no line
   * @param what what was found and what was expected
   * @param remedy how to mend it
   */
  public FormatException(String file, long line, String what, String remedy) {
    super(located(file, line, what, remedy));
    this.file = file;
    this.line = line;
    this.what = what;
    this.remedy = remedy;
  }

  /** A file that cannot be read at all. */
  public static FormatException unreadable(Path path, IOException cause) {
    FormatException fault =
        new FormatException(
            String.valueOf(path.getFileName()),
            0,
            cause instanceof NoSuchFileException ? "no such file" : "the file cannot be read",
            "check the path, and that you may read the file");
    fault.initCause(cause);
    return fault;
  }

  /** The one form of every message about a file; {@code line} 0 means no line. */
  public static String located(String file, long line, String what, String remedy) {
    return line > 0
        ? String.format(Locale.ROOT, "%s:%d: %s: %s", file, line, what, remedy)
        : String.format(Locale.ROOT, "%s: %s: %s", file, what, remedy);
  }

  /** File name without folders. */
  public String file() {
    return file;
  }

  /** Line from 1; 0 where the fault has no line. */
  public long line() {
    return line;
  }

  /** What was found and what was expected. */
  public String what() {
    return what;
  }

  /** How to mend it. */
  public String remedy() {
    return remedy;
  }
}
