package io.github.roundstar.ingest.layout;

import java.util.List;
import java.util.Optional;

/**
 * Where runs begin and end.
 *
 * @param begins pattern of a line before a run's rows; its groups may be named as settings are,
 *     less their hyphens. Without it, a run begins with the first row and after each line of names
 * @param ends pattern of the line after a run's rows
 * @param restart whether a time that steps back begins a run
 * @param leftOut blocks of lines that are no rows
 */
public record RunMarks(
    Optional<LinePattern> begins,
    Optional<LinePattern> ends,
    boolean restart,
    List<Block> leftOut) {
  /** Copies. */
  public RunMarks {
    leftOut = List.copyOf(leftOut);
  }

  /** The same with blocks left out. */
  public RunMarks without(List<Block> blocks) {
    return new RunMarks(begins, ends, restart, blocks);
  }

  /**
   * Lines to leave out, both ends included.
   *
   * @param from pattern of the first
   * @param to pattern of the last; without it, the block ends before a line that is blank, a
   *     remark, names the columns or begins a run
   */
  public record Block(LinePattern from, Optional<LinePattern> to) {}
}
