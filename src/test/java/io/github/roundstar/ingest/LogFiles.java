package io.github.roundstar.ingest;

import static java.nio.charset.StandardCharsets.UTF_8;

import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.RowCounts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** Writes small logs into a folder and reads them. */
final class LogFiles {
  private final Path folder;

  LogFiles(Path folder) {
    this.folder = folder;
  }

  Path write(String name, String text) throws IOException {
    return write(name, text.getBytes(UTF_8));
  }

  Path write(String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes);
  }

  GuideLog read(String text) throws IOException, UnusableInputException {
    return GuideTableReader.read(write("night.log", text));
  }

  /** A plain table with the three required columns, and one more line of names if given. */
  static String csv(String moreColumns, String... rows) {
    return "time,ra_offset,dec_offset" + moreColumns + "\n" + String.join("\n", rows) + "\n";
  }

  static String ecsv(String meta, String... rows) {
    return """
        # %ECSV 1.0
        # ---
        # delimiter: ','
        # datatype:
        # - {name: time, unit: s, datatype: float64}
        # - {name: ra_offset, unit: arcsec, datatype: float64}
        # - {name: dec_offset, unit: arcsec, datatype: float64}
        # - {name: run, datatype: int64}
        # - {name: ra_pulse, unit: ms, datatype: float64}
        # - {name: dec_pulse, unit: ms, datatype: float64}
        # - {name: event, datatype: string}
        # meta: {\
        """
        + meta
        + "}\ntime,ra_offset,dec_offset,run,ra_pulse,dec_pulse,event\n"
        + String.join("\n", rows)
        + "\n";
  }

  static RowCounts total(GuideLog log) {
    return total(Stream.of(log));
  }

  static RowCounts total(Stream<GuideLog> logs) {
    return logs.flatMap(log -> log.runs().stream())
        .map(run -> run.counts())
        .reduce(RowCounts.NONE, RowCounts::plus);
  }
}
