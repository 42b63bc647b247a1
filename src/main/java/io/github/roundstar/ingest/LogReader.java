package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TextEncoding;
import io.github.roundstar.formats.TextSource;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.model.GuideLog;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** Reads any log: guide tables as such, every other text log by its layout. */
public final class LogReader {
  private static final int HEAD = 64 * 1024;
  private static final String ECSV = "# %ECSV";

  private LogReader() {}

  /**
   * Reads a log.
   *
   * @param layout layout of logs that are no guide tables; where it is not given, it is worked out
   * @throws UnusableInputException if it cannot be read, has not one frame that can be used, or
   *     something about its layout must be asked
   */
  public static GuideLog read(Path log, Optional<Layout> layout) throws UnusableInputException {
    if (isGuideTable(log)) {
      return GuideTableReader.read(log);
    }
    if (layout.isEmpty()) {
      return InferredLog.readIfCertain(log, InferredLog.infer(log));
    }
    try {
      return Gate.passed(LayoutReader.read(log, layout.get()), layout.get());
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    }
  }

  /**
   * Whether the first line with text is that of an ECSV file, or has columns of a guide table; true
   * of an empty file, of which the reader of guide tables says that it is empty.
   */
  public static boolean isGuideTable(Path log) throws UnusableInputException {
    try {
      byte[] bytes = TextSource.head(log, HEAD);
      String head = TextEncoding.ofMark(bytes).decoded(bytes);
      String line =
          head.lines().map(String::strip).filter(text -> !text.isEmpty()).findFirst().orElse(ECSV);
      return line.replace("\uFEFF", "").startsWith(ECSV)
          || Arrays.stream(line.split(",", -1))
              .map(String::strip)
              .anyMatch(
                  name ->
                      name.equals(GuideColumn.RA_OFFSET.key())
                          || name.equals(GuideColumn.DEC_OFFSET.key()));
    } catch (IOException e) {
      throw new UnusableInputException(log, e);
    }
  }
}
