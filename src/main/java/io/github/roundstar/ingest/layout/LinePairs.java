package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Logs that take two lines or more to a frame, such as one for the star and one for the pulse:
 * tells the lines that continue others by a word or a sign that only they have.
 */
final class LinePairs {
  private static final Pattern WORD = Pattern.compile("\\p{L}{3,}");
  private static final int LOOKED_AT = 3000;
  private static final int FEWEST = 20;

  /** Share of the lines in which a word is part of what lines are made of. */
  private static final double OFTEN = 0.1;

  /** Other lines with that word, such as one of names. */
  private static final int FEW = 3;

  private static final double NEARLY_ALWAYS = 0.95;

  private LinePairs() {}

  /** The pattern of lines that continue the line before; empty where each frame has one line. */
  static Optional<LinePattern> of(List<String> lines) {
    List<String> some = lines.subList(0, Math.min(LOOKED_AT, lines.size()));
    Map<String, List<Integer>> families = families(some);
    List<Map.Entry<String, List<Integer>>> large =
        families.entrySet().stream()
            .filter(entry -> entry.getValue().size() >= FEWEST)
            .filter(entry -> hasNumbers(some, entry.getValue()))
            .sorted((a, b) -> b.getValue().size() - a.getValue().size())
            .limit(4)
            .toList();
    for (Map.Entry<String, List<Integer>> first : large) {
      for (Map.Entry<String, List<Integer>> second : large) {
        boolean leads = first.getValue().get(0) < second.getValue().get(0);
        if (first != second && leads && follows(first.getValue(), second.getValue(), some)) {
          Optional<LinePattern> mark = mark(some, families, second.getKey());
          if (mark.isPresent()) {
            return mark;
          }
        }
      }
    }
    return Optional.empty();
  }

  private static boolean hasNumbers(List<String> lines, List<Integer> family) {
    return family.stream()
            .limit(10)
            .filter(i -> lines.get(i).chars().anyMatch(Character::isDigit))
            .count()
        >= 8;
  }

  /**
   * Every line of the second family comes right after one of the first, and nearly each has one.
   */
  private static boolean follows(List<Integer> first, List<Integer> second, List<String> lines) {
    Set<Integer> starts = new HashSet<>(first);
    long after = second.stream().filter(i -> starts.contains(i - 1)).count();
    boolean alternate = second.size() >= 0.8 * first.size();
    return after >= NEARLY_ALWAYS * second.size()
        && alternate
        && first.size() + second.size() > 0.6 * lines.size();
  }

  /** Lines by the frequent words that they hold, and the sign that they begin with. */
  private static Map<String, List<Integer>> families(List<String> lines) {
    Map<String, Integer> counts = new HashMap<>();
    for (String line : lines) {
      words(line).forEach(word -> counts.merge(word, 1, Integer::sum));
    }
    Map<String, List<Integer>> families = new LinkedHashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (!line.isBlank()) {
        StringBuilder family = new StringBuilder();
        char begin = line.charAt(0);
        family.append(Character.isLetterOrDigit(begin) ? '.' : begin);
        for (String word : words(line)) {
          if (counts.get(word) >= OFTEN * lines.size()) {
            family.append(' ').append(word);
          }
        }
        families.computeIfAbsent(family.toString(), any -> new ArrayList<>()).add(i);
      }
    }
    return families;
  }

  private static Set<String> words(String line) {
    Set<String> words = new LinkedHashSet<>();
    Matcher word = WORD.matcher(line);
    while (word.find() && words.size() < 40) {
      words.add(word.group());
    }
    return words;
  }

  /** A word or first sign of the second family that no line of another large family has. */
  private static Optional<LinePattern> mark(
      List<String> lines, Map<String, List<Integer>> families, String second) {
    List<String> expressions = new ArrayList<>();
    if (second.charAt(0) != '.') {
      expressions.add("^" + LinePattern.quoted(second.substring(0, 1)).replace("\t", "\\t"));
    }
    for (String word : second.substring(1).strip().split(" ")) {
      if (!word.isEmpty()) {
        expressions.add("(?<!\\p{L})" + LinePattern.quoted(word) + "(?!\\p{L})");
      }
    }
    Set<Integer> own = new HashSet<>(families.get(second));
    for (String expression : expressions) {
      LinePattern pattern = LinePattern.of(expression);
      int missed = 0;
      int others = 0;
      for (int i = 0; i < lines.size(); i++) {
        boolean found = pattern.find(lines.get(i)).isPresent();
        missed += own.contains(i) && !found ? 1 : 0;
        others += !own.contains(i) && found ? 1 : 0;
      }
      if (missed == 0 && others <= FEW) {
        return Optional.of(pattern);
      }
    }
    return Optional.empty();
  }

  /** The lines with each continued one joined to those that continue it, which are left blank. */
  static List<String> joined(List<String> lines, LinePattern joins, String joint) {
    List<String> all = new ArrayList<>(lines);
    int last = -1;
    for (int i = 0; i < lines.size(); i++) {
      if (joins.find(lines.get(i)).isEmpty()) {
        last = i;
      } else if (last >= 0) {
        all.set(last, all.get(last) + joint + lines.get(i));
        all.set(i, "");
      }
    }
    return all;
  }
}
