package io.github.roundstar.model;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/**
 * All runs between one noon and the next.
 *
 * @param name the evening's date such as {@code 2026-03-14}, or {@code undated-} and eight digits
 *     of the file's hash; names the output files
 * @param runs the runs in order of time, numbered from 1, never overlapping
 * @param sources the files they came from
 * @param utcOffset offset of the logs' clocks from UTC, where it is told and other than Z
 */
public record Night(
    String name, List<GuideRun> runs, List<SourceFile> sources, Optional<ZoneOffset> utcOffset) {
  /** A night whose logs tell no offset. */
  public Night(String name, List<GuideRun> runs, List<SourceFile> sources) {
    this(name, runs, sources, Optional.empty());
  }

  /** Copies. */
  public Night {
    runs = List.copyOf(runs);
    sources = List.copyOf(sources);
  }
}
