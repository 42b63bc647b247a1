package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TextSource;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.model.GuideLog;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** Reads any log: guide tables as such, every other text log by its layout. */
public final class LogReader {
  private static final String ECSV = "# %ECSV";

  private LogReader() {}

  /**
   * Reads a log.
   *
   * @param layout layout of logs that are no guide tables
   * @throws UnusableInputException if it cannot be read, or has not one frame that can be used
   */
  public static GuideLog read(Path log, Optional<Layout> layout) throws UnusableInputException {
    return layout.isEmpty() || isGuideTable(log)
        ? GuideTableReader.read(log)
        : LayoutReader.read(log, layout.get());
  }

  /** Whether the first line with text is that of an ECSV file, or has columns of a guide table. */
  static boolean isGuideTable(Path log) throws UnusableInputException {
    try (TextSource source = TextSource.open(log)) {
      while (source.next()) {
        if (source.fault().isPresent()) {
          return false;
        }
        String line = source.line();
        if (!line.isBlank()) {
          return line.startsWith(ECSV)
              || Arrays.stream(line.split(",", -1))
                  .map(String::strip)
                  .anyMatch(
                      name ->
                          name.equals(GuideColumn.RA_OFFSET.key())
                              || name.equals(GuideColumn.DEC_OFFSET.key()));
        }
      }
      return true; // an empty file: the reader of guide tables says so
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    } catch (IOException e) {
      throw new UnusableInputException(log, e);
    }
  }
}
