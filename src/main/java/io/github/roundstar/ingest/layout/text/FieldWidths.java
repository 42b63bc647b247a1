package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.Delimiter;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Widths of the fields of a table whose columns stand one above the other. */
final class FieldWidths {
  private FieldWidths() {}

  /** Fields that end where all rows have a blank. */
  static List<Integer> of(List<String> lines) {
    Map<String, List<String>> kinds = new LinkedHashMap<>();
    for (String line : lines) {
      if (line.length() <= 400 && isMostlyNumbers(line)) {
        kinds.computeIfAbsent(beginning(line), any -> new ArrayList<>()).add(line);
      }
    }
    List<String> likely =
        kinds.values().stream()
            .max(Comparator.comparingInt((List<String> kind) -> kind.size()))
            .orElse(List.of());
    int longest = likely.stream().mapToInt(String::length).max().orElse(0);
    BitSet ink = new BitSet();
    for (String line : likely) {
      for (int i = 0; i < line.length(); i++) {
        ink.set(i, ink.get(i) || line.charAt(i) != ' ');
      }
    }
    List<Integer> widths = new ArrayList<>();
    int from = 0;
    while (from < longest && ink.nextSetBit(from) >= 0) {
      int end = ink.nextClearBit(ink.nextSetBit(from));
      widths.add(Math.min(end, longest) - from);
      from = end;
    }
    return withLetters(widths, likely);
  }

  /**
   * Letters behind numbers that end where numbers without a letter do belong to their field, and so
   * do units that stand behind every number.
   */
  private static List<Integer> withLetters(List<Integer> widths, List<String> lines) {
    List<Integer> all = new ArrayList<>(widths);
    for (int f = all.size() - 2; f >= 0; f--) {
      int letters = 0;
      int bare = 0;
      int others = 0;
      int units = 0;
      for (String line : lines) {
        List<String> cells = Cells.of(line, Delimiter.FIXED, all);
        String one = f + 1 < cells.size() ? cells.get(f) : "";
        String two = f + 1 < cells.size() ? cells.get(f + 1) : "";
        boolean letter = two.length() == 1 && Character.isLetter(two.charAt(0));
        letters += Look.startsAsNumber(one) && letter ? 1 : 0;
        bare += one.isEmpty() && Look.startsAsNumber(two) ? 1 : 0;
        others += one.isEmpty() == letter ? 1 : 0;
        boolean unit = Look.startsAsNumber(one) && Words.unit(two).isPresent();
        units += unit ? 1 : one.isEmpty() && two.isEmpty() ? 0 : -lines.size();
      }
      if (units > 0 || letters > 0 && bare > 0 && others == 0) {
        all.set(f, all.get(f) + all.remove(f + 1));
      }
    }
    return all;
  }

  /** The word or the sign that a line begins with; one text for all numbers. */
  private static String beginning(String line) {
    String text = line.strip();
    int end = 0;
    while (end < text.length() && Character.isLetter(text.charAt(end))) {
      end++;
    }
    return end > 0
        ? text.substring(0, end)
        : Look.startsAsNumber(text) ? "0" : text.substring(0, 1);
  }

  private static boolean isMostlyNumbers(String line) {
    String text = line.strip().replaceFirst("^\\[([^\\]]*)\\]", "$1");
    boolean lettered = text.matches("\\p{L}{1,12} .*"); // a type or a level leads the row
    List<String> cells = Cells.of(text, Delimiter.BLANKS, List.of());
    long numeric = cells.stream().filter(cell -> Look.of(cell).isNumeric()).count();
    return (lettered || Look.startsAsNumber(text)) && numeric >= 2 && numeric >= 0.6 * cells.size();
  }
}
