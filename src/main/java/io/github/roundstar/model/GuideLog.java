package io.github.roundstar.model;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/**
 * One log file as read.
 *
 * @param source the file and what became of its rows
 * @param utcOffset offset of the log's clock where the header gives one other than Z
 * @param runs the runs in order of appearance
 * @param warnings what the user should know, each {@code file:line: what is wrong: how to mend it}
 */
public record GuideLog(
    SourceFile source, Optional<ZoneOffset> utcOffset, List<GuideRun> runs, List<String> warnings) {
  /** Copies. */
  public GuideLog {
    runs = List.copyOf(runs);
    warnings = List.copyOf(warnings);
  }
}
