package io.github.roundstar.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** Messages for people, of which the fourth and later ones of a kind are only counted. */
public final class RepeatedLines {
  /** Lines of each kind that are told. */
  public static final int TOLD = 3;

  private static final Pattern NUMBER = Pattern.compile("[0-9]+");

  private RepeatedLines() {}

  /** What lines of one kind have in common: all but their numbers. */
  public static String kind(String line) {
    return NUMBER.matcher(line).replaceAll("#");
  }

  /**
   * The first three of each kind, then how many more there are. Of one kind are lines that differ
   * in numbers only.
   */
  public static List<String> shortened(List<String> lines) {
    Map<String, List<String>> kinds = new LinkedHashMap<>();
    for (String line : lines) {
      kinds.computeIfAbsent(kind(line), kind -> new ArrayList<>()).add(line);
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
