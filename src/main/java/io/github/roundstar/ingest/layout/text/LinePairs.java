package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.LinePattern;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Logs that take two lines or more to a frame, such as one for the star and one for the pulse: two
 * kinds of lines, told apart by a sign or by one of their first words, that take turns.
 */
public final class LinePairs {
  private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");
  private static final int LOOKED_AT = 3000;
  private static final int WORDS_LOOKED_AT = 3;
  private static final int FEWEST = 20;

  /** Other lines with the word that tells a kind. */
  private static final int FEW = 3;

  private static final double NEARLY_ALWAYS = 0.95;

  private LinePairs() {}

  /** The pattern of lines that continue the line before; empty where each frame has one line. */
  public static Optional<LinePattern> of(List<String> lines) {
    List<String> some = lines.stream().filter(line -> !line.isBlank()).limit(LOOKED_AT).toList();
    for (int word = 0; word < WORDS_LOOKED_AT; word++) {
      Map<String, List<Integer>> kinds = kinds(some, word);
      for (Map.Entry<String, List<Integer>> first : kinds.entrySet()) {
        for (Map.Entry<String, List<Integer>> second : kinds.entrySet()) {
          boolean leads = first.getValue().get(0) < second.getValue().get(0);
          if (leads && follows(first.getValue(), second.getValue(), some)) {
            Optional<LinePattern> mark = mark(some, second.getKey(), second.getValue().size());
            if (mark.isPresent()) {
              return mark;
            }
          }
        }
      }
    }
    return Optional.empty();
  }

  /** Frequent kinds of lines by the sign that they begin with and one of their words. */
  private static Map<String, List<Integer>> kinds(List<String> lines, int word) {
    Map<String, List<Integer>> kinds = new LinkedHashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      char begin = line.charAt(0);
      Matcher words = WORD.matcher(line);
      int found = -1;
      while (found < word && words.find()) {
        found++;
      }
      String key =
          (Character.isLetterOrDigit(begin) ? '.' : begin) + (found == word ? words.group() : "");
      kinds.computeIfAbsent(key, any -> new ArrayList<>()).add(i);
    }
    kinds.values().removeIf(kind -> kind.size() < FEWEST || !hasNumbers(lines, kind));
    return kinds;
  }

  private static boolean hasNumbers(List<String> lines, List<Integer> kind) {
    return kind.stream()
            .limit(10)
            .filter(i -> lines.get(i).chars().anyMatch(Character::isDigit))
            .count()
        >= 8;
  }

  /** Every line of the second kind comes right after one of the first, and nearly each has one. */
  private static boolean follows(List<Integer> first, List<Integer> second, List<String> lines) {
    Set<Integer> starts = new HashSet<>(first);
    long after = second.stream().filter(i -> starts.contains(i - 1)).count();
    return after >= NEARLY_ALWAYS * second.size()
        && second.size() >= 0.8 * first.size()
        && first.size() + second.size() > 0.4 * lines.size();
  }

  /** The word or the first sign of a kind, if next to no other line has it. */
  private static Optional<LinePattern> mark(List<String> lines, String kind, int size) {
    List<String> expressions = new ArrayList<>();
    String word = LinePattern.quoted(kind.substring(1));
    if (!word.isEmpty()) {
      expressions.add("^\\P{L}*" + word + "(?!\\p{L})");
      expressions.add("(?<!\\p{L})" + word + "(?!\\p{L})");
    }
    if (kind.charAt(0) != '.') {
      expressions.add("^" + LinePattern.quoted(kind.substring(0, 1)).replace("\t", "\\t"));
    }
    for (String expression : expressions) {
      LinePattern pattern = LinePattern.of(expression);
      long found = lines.stream().filter(line -> pattern.find(line).isPresent()).count();
      if (found >= size && found <= size + FEW) {
        return Optional.of(pattern);
      }
    }
    return Optional.empty();
  }

  /** The lines with each continued one joined to those that continue it, which are left blank. */
  public static List<String> joined(List<String> lines, LinePattern joins, String joint) {
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
