package io.github.roundstar.results;

import java.util.List;

/**
 * The guided offsets of one run against time.
 *
 * @param run number of the run
 * @param startSeconds first frame, seconds since the night's first frame
 * @param endSeconds last frame, seconds since the night's first frame
 * @param ra offsets east per column: least, median, greatest [s; arcsec]
 * @param dec offsets north, likewise
 * @param marks what happened when
 */
public record RunTrace(
    int run, double startSeconds, double endSeconds, Band ra, Band dec, List<Mark> marks) {
  /** Copies the lists. */
  public RunTrace {
    marks = List.copyOf(marks);
  }
}
