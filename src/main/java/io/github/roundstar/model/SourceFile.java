package io.github.roundstar.model;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A file that went into a result, and what became of its rows.
 *
 * @param name file name without folders
 * @param sha256 hash of the file's bytes, lower-case hex
 * @param bytes size on disk
 * @param layout how the rows were laid out, such as {@code guide-table/ecsv}
 * @param rows data rows read
 * @param used rows in the RMS
 * @param unusableByReason number of rows that could not be read, by kind of fault
 * @param firstUnusable the first of them, at most {@link #FIRST_UNUSABLE}
 */
public record SourceFile(
    String name,
    String sha256,
    long bytes,
    String layout,
    int rows,
    int used,
    SortedMap<String, Integer> unusableByReason,
    List<UnusableRow> firstUnusable) {
  /** How many unusable rows are kept with their line. */
  public static final int FIRST_UNUSABLE = 1000;

  /** Copies. */
  public SourceFile {
    unusableByReason = Collections.unmodifiableSortedMap(new TreeMap<>(unusableByReason));
    firstUnusable = List.copyOf(firstUnusable);
  }

  /** Rows that could not be read. */
  public int unusable() {
    return unusableByReason.values().stream().mapToInt(Integer::intValue).sum();
  }
}
