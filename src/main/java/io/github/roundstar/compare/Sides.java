package io.github.roundstar.compare;

import io.github.roundstar.results.Input;
import io.github.roundstar.results.NightResult;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Both sides of a comparison, each night once.
 *
 * @param before nights before
 * @param after nights after
 * @param noticed nights that were left out, and why
 */
public record Sides(List<NightInput> before, List<NightInput> after, List<String> noticed) {
  /** Copies the lists. */
  public Sides {
    before = List.copyOf(before);
    after = List.copyOf(after);
    noticed = List.copyOf(noticed);
  }

  /**
   * Leaves out what says nothing of a change: a night given twice counts once, and one on both
   * sides on neither. Nights are the same when a log went into both.
   */
  public static Sides of(List<NightInput> before, List<NightInput> after) {
    List<String> noticed = new ArrayList<>();
    List<NightInput> first = distinct(before, noticed);
    List<NightInput> second = distinct(after, noticed);
    List<NightInput> both = first.stream().filter(night -> isAmong(night, second)).toList();
    for (NightInput night : both) {
      noticed.add(
          night.file() + ": the night is on both sides: it was left out of both: give it once");
    }
    return new Sides(
        first.stream().filter(night -> !both.contains(night)).toList(),
        second.stream().filter(night -> !isAmong(night, both)).toList(),
        noticed);
  }

  /** Their results alone. */
  static List<NightResult> results(List<NightInput> nights) {
    return nights.stream().map(NightInput::result).toList();
  }

  private static List<NightInput> distinct(List<NightInput> nights, List<String> noticed) {
    List<NightInput> kept = new ArrayList<>();
    for (NightInput night : nights) {
      if (isAmong(night, kept)) {
        noticed.add(night.file() + ": the night was given before: it counts once: give it once");
      } else {
        kept.add(night);
      }
    }
    return kept;
  }

  /** A night shares a log with another, and begins when that one does. */
  private static boolean isAmong(NightInput night, List<NightInput> others) {
    return others.stream().anyMatch(other -> same(night.result(), other.result()));
  }

  private static boolean same(NightResult one, NightResult other) {
    Set<String> hashes = new HashSet<>(one.inputs().stream().map(Input::sha256).toList());
    hashes.retainAll(other.inputs().stream().map(Input::sha256).toList());
    return !hashes.isEmpty() && one.night().date().equals(other.night().date());
  }
}
