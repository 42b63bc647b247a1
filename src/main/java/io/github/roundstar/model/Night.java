package io.github.roundstar.model;

import java.util.List;

/**
 * All runs between one noon and the next.
 *
 * @param name the evening's date such as {@code 2026-03-14}, or {@code undated-} and eight digits
 *     of the file's hash; names the output files
 * @param runs the runs in order of time, numbered from 1, never overlapping
 * @param sources the files they came from
 */
public record Night(String name, List<GuideRun> runs, List<SourceFile> sources) {
  /** Copies. */
  public Night {
    runs = List.copyOf(runs);
    sources = List.copyOf(sources);
  }
}
