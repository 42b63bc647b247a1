package io.github.roundstar.ingest;

import java.util.Arrays;

/**
 * Decides by its time whether a row is new. Times are seconds on the file's own clock; they must
 * ascend from row to row, but for rows already seen.
 */
final class RowClock {
  /** What a row is, by its time. */
  enum Verdict {
    NEW,
    /** Same time and values as an earlier row. */
    DUPLICATE,
    /** Same time as an earlier row, other values. */
    CONFLICT,
    /** Earlier than the last new row. */
    BACKWARDS
  }

  private double[] seconds = new double[256];
  private long[] hashes = new long[256];
  private int[] lines = new int[256];
  private int size;
  private int clockFrom;
  private int match;

  /**
   * Takes the next row.
   *
   * @param newClock whether the row may begin a clock of its own
   */
  Verdict take(double time, long valueHash, long line, boolean newClock) {
    if (newClock) {
      clockFrom = size;
    }
    if (size == clockFrom || time > seconds[size - 1]) {
      add(time, valueHash, line);
      return Verdict.NEW;
    }
    match = Arrays.binarySearch(seconds, clockFrom, size, time);
    if (match < 0) {
      return Verdict.BACKWARDS;
    }
    return hashes[match] == valueHash ? Verdict.DUPLICATE : Verdict.CONFLICT;
  }

  private void add(double time, long valueHash, long line) {
    if (size == seconds.length) {
      int larger = size + size / 2;
      seconds = Arrays.copyOf(seconds, larger);
      hashes = Arrays.copyOf(hashes, larger);
      lines = Arrays.copyOf(lines, larger);
    }
    seconds[size] = time;
    hashes[size] = valueHash;
    lines[size] = (int) Math.min(line, Integer.MAX_VALUE);
    size++;
  }

  /** Line of the earlier row, after {@link Verdict#DUPLICATE} or {@link Verdict#CONFLICT}. */
  int earlierLine() {
    return lines[match];
  }

  /** Time of the last new row. */
  double lastSeconds() {
    return seconds[size - 1];
  }
}
