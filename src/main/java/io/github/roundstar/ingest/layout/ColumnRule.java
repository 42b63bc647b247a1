package io.github.roundstar.ingest.layout;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What one column means.
 *
 * @param name its name in the line of names
 * @param at its place from 1, where it has no name
 * @param means what it means
 * @param unit unit of its numbers
 * @param positive where a positive number points: where the star is seen from the set point, or
 *     where a pulse pushes the mount
 * @param turnsWithPier whether the direction is the opposite on the other side of the pier than the
 *     one the layout is written for
 * @param missing what stands in the field when there is no value
 * @param toward codes for east or north, in the field or in a column of their own; without them, E
 *     and N in any case, and words that begin so
 * @param away codes for west or south
 */
public record ColumnRule(
    Optional<String> name,
    OptionalInt at,
    Meaning means,
    Optional<String> unit,
    Optional<Direction> positive,
    boolean turnsWithPier,
    List<String> missing,
    List<String> toward,
    List<String> away) {
  /** Copies. */
  public ColumnRule {
    missing = List.copyOf(missing);
    toward = List.copyOf(toward);
    away = List.copyOf(away);
  }

  /** A column without codes for directions. */
  public ColumnRule(
      Optional<String> name,
      OptionalInt at,
      Meaning means,
      Optional<String> unit,
      Optional<Direction> positive,
      boolean turnsWithPier,
      List<String> missing) {
    this(name, at, means, unit, positive, turnsWithPier, missing, List.of(), List.of());
  }

  /** The column as the user would call it. */
  public String called() {
    return name.orElseGet(() -> "column " + at.orElse(0));
  }
}
