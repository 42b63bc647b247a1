package io.github.roundstar.results;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Messages for people, of which the fourth and later ones of a kind are only counted. */
public final class RepeatedLines {
  private static final int TOLD = 3;

  private RepeatedLines() {}

  /**
   * The first three of each kind, then how many more there are. Of one kind are lines that differ
   * in numbers only.
   */
  public static List<String> shortened(List<String> lines) {
    Map<String, List<String>> kinds = new LinkedHashMap<>();
    for (String line : lines) {
      kinds.computeIfAbsent(line.replaceAll("[0-9]+", "#"), kind -> new ArrayList<>()).add(line);
    }
    List<String> told = new ArrayList<>();
    for (List<String> kind : kinds.values()) {
      told.addAll(kind.subList(0, Math.min(TOLD, kind.size())));
      if (kind.size() > TOLD) {
        told.add(String.format(Locale.ROOT, "and %,d more", kind.size() - TOLD));
      }
    }
    return told;
  }
}
