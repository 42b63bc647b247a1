package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TextSource;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.ingest.layout.text.LayoutLines;
import io.github.roundstar.model.GuideLog;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Reads a text log as a layout says. Rows are accounted for as in {@link GuideTableReader}, and the
 * same checks hold.
 */
public final class LayoutReader {
  private LayoutReader() {}

  /**
   * Reads a layout file.
   *
   * @throws UnusableInputException if it cannot be used
   */
  public static Layout layout(Path file) throws UnusableInputException {
    try {
      return LayoutFile.read(file);
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    } catch (IOException e) {
      throw new UnusableInputException(file, e);
    }
  }

  /**
   * Reads a log.
   *
   * @throws UnusableInputException if it does not fit the layout, or has not one frame that can be
   *     used
   */
  public static GuideLog read(Path log, Layout layout) throws UnusableInputException {
    try {
      return read(String.valueOf(log.getFileName()), Files.newInputStream(log), layout);
    } catch (IOException e) {
      throw new UnusableInputException(log, e);
    }
  }

  /**
   * Reads a log from a stream and closes it.
   *
   * @param file name for messages, without folders
   */
  public static GuideLog read(String file, InputStream in, Layout layout)
      throws UnusableInputException, IOException {
    try (LayoutLines lines =
        new LayoutLines(TextSource.open(file, in, layout.text().encoding()), layout)) {
      Problems problems = new Problems(file);
      HeaderMeta meta = HeaderMeta.empty(file);
      LayoutRows rows = new LayoutRows(lines, layout, meta, problems);
      return new GuideLogBuilder(rows, rows.columns(), meta, problems).read();
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    }
  }
}
