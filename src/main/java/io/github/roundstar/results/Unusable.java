package io.github.roundstar.results;

import io.github.roundstar.model.UnusableRow;
import java.util.List;
import java.util.SortedMap;

/**
 * Rows that could not be read.
 *
 * @param count how many
 * @param byReason how many by kind of fault
 * @param first the first thousand, with their line
 */
public record Unusable(int count, SortedMap<String, Integer> byReason, List<UnusableRow> first) {
  /** Copies the lists. */
  public Unusable {
    first = List.copyOf(first);
  }
}
