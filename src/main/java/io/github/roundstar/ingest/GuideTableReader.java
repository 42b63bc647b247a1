package io.github.roundstar.ingest;

import io.github.roundstar.formats.DelimitedTable;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.HeaderNode;
import io.github.roundstar.model.GuideLog;
import java.io.IOException;
import java.nio.file.Path;

/**
 * Reads a guide table: ECSV 1.0, or plain CSV with the same column names and arcsec, s and ms
 * assumed; optionally gzip.
 *
 * <p>Times become the middle of the exposure ({@code time_mark}), pulses move to the row whose
 * offset they answer ({@code pulse_row}), offsets become arcseconds. A run with absolute time
 * counts its seconds from its first frame; one without keeps the seconds of the log, so that the
 * runs of an undated log keep their distance. Where a table has both {@code utc} and {@code time},
 * {@code utc} is used.
 *
 * <p>A row that cannot be used is counted, with its line and what to do. Of two rows with the same
 * time the second is a duplicate if it says the same, else unusable. If the clock was set back,
 * rows are unusable until the time passes the last good one again; where it jumped ahead by hours a
 * new run begins, with a warning. A new value of {@code run} in a log without absolute time may
 * begin a clock of its own. A row whose {@code run} is empty stays in the current run. A shift of
 * the set point other than zero is a dither even without the event.
 */
public final class GuideTableReader {
  private GuideTableReader() {}

  /**
   * Reads a file.
   *
   * @throws UnusableInputException if it is no guide table, or has not one frame that can be used
   */
  public static GuideLog read(Path path) throws UnusableInputException {
    try (DelimitedTable table = DelimitedTable.open(path)) {
      Problems problems = new Problems(table.file());
      ColumnTable columns = ColumnTable.of(table, problems);
      HeaderMeta meta = HeaderMeta.read(table.file(), table.meta(), problems);
      for (HeaderNode unknown : table.unknownHeaderKeys()) {
        problems.warn(
            unknown.line(),
            "unknown header key " + unknown.text() + ", ignored",
            "put the log's own data below meta, or correct the key");
      }
      return new GuideLogBuilder(new NativeRows(table), columns, meta, problems).read();
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    } catch (IOException e) {
      throw new UnusableInputException(path, e);
    }
  }
}
