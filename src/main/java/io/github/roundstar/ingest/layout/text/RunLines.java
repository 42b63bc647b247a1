package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.RunMarks;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Finds the lines by which runs begin and end: alike before, or after, each block of rows. */
public final class RunLines {
  private static final int FEWEST_SIGNS = 3;
  private static final int LONGEST = 24;

  private RunLines() {}

  /** Marks of the runs; none where the log has one block, or its blocks begin unlike each other. */
  static RunMarks of(List<String> lines, Set<Integer> rows, String nameLine) {
    RunMarks byHead = byHead(lines, rows, nameLine);
    return byHead.begins().isPresent() ? byHead : byWord(lines, rows, nameLine);
  }

  /** Lines that say that a run begins, or tell its number. */
  private static RunMarks byWord(List<String> lines, Set<Integer> rows, String nameLine) {
    int first = rows.stream().mapToInt(i -> i).min().orElse(0);
    Map<String, Integer> begins = new LinkedHashMap<>();
    Map<String, Integer> ahead = new HashMap<>();
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (rows.contains(i) || line.isBlank() || line.length() > 200 || line.equals(nameLine)) {
        continue;
      }
      String family = line.replaceAll("[0-9]+", "0");
      if (!seen.contains(family)) {
        Words words = Words.of(line);
        boolean numbered = words.has("run") && line.matches(".*[0-9].*");
        if (!words.has("run") || words.has("end") || !words.has("start") && !numbered) {
          seen.add(family);
          continue;
        }
      }
      String expression = template(line);
      if (!expression.isEmpty()) {
        (i < first ? ahead : begins).merge(expression, 1, Integer::sum);
      }
    }
    for (String expression : begins.keySet()) {
      Optional<LinePattern> mark = Optional.of(LinePattern.of(expression));
      boolean inRows =
          rows.stream().limit(200).anyMatch(row -> mark.get().find(lines.get(row)).isPresent());
      if (inRows) {
        continue;
      }
      return ahead.getOrDefault(expression, 0) == 1
          ? new RunMarks(mark, Optional.empty(), false, List.of())
          : new RunMarks(Optional.empty(), mark, false, List.of());
    }
    return new RunMarks(Optional.empty(), Optional.empty(), false, List.of());
  }

  /** The words of a line up to the one that tells of a run or its start, any number for numbers. */
  private static String template(String line) {
    Matcher word = Pattern.compile("\\p{L}+").matcher(line);
    int from = -1;
    int to = -1;
    while (word.find()) {
      Words meaning = Words.of(word.group());
      if (meaning.hasAny("run", "start")) {
        from = from < 0 ? word.start() : from;
        to = word.end();
      }
    }
    if (from < 0 || to - from > 60) {
      return "";
    }
    String text = LinePattern.quoted(line.substring(from, to)).replace("\t", "\\t");
    String number =
        to < line.length() && line.substring(to).matches(" ?[0-9]+.*") ? " ?[0-9]+" : "";
    return "(?<!\\p{L})" + text.replaceAll("[0-9]+", "[0-9]+") + "(?!\\p{L})" + number;
  }

  private static RunMarks byHead(List<String> lines, Set<Integer> rows, String nameLine) {
    List<List<String>> heads = heads(lines, rows, nameLine);
    if (nameLine == null || heads.size() < 2) {
      return new RunMarks(Optional.empty(), Optional.empty(), false, List.of());
    }
    Optional<String> begins =
        heads.get(1).stream()
            .map(RunLines::beginning)
            .filter(text -> text.length() >= FEWEST_SIGNS)
            .filter(text -> text.chars().anyMatch(Character::isLetter)) // no rule of dashes
            .filter(text -> heads.stream().allMatch(head -> once(head, text)))
            .findFirst();
    Optional<String> ends =
        begins.isEmpty() || heads.get(1).isEmpty()
            ? Optional.empty()
            : Optional.of(heads.get(1).get(0))
                .filter(line -> !line.startsWith(begins.get()))
                .filter(line -> lines.stream().filter(line::equals).count() <= heads.size());
    return new RunMarks(begins.map(RunLines::mark), ends.map(RunLines::mark), false, List.of());
  }

  static LinePattern mark(String text) {
    return LinePattern.of("^" + LinePattern.quoted(text).replace("\t", "\\t"));
  }

  private static boolean once(List<String> head, String text) {
    return head.stream().filter(line -> line.startsWith(text)).count() == 1;
  }

  /** A line up to its first digit. */
  public static String beginning(String line) {
    int end = 0;
    while (end < Math.min(LONGEST, line.length()) && !Character.isDigit(line.charAt(end))) {
      end++;
    }
    return line.substring(0, end).stripTrailing();
  }

  /** The lines before each line of names, up to the rows before them. */
  private static List<List<String>> heads(List<String> lines, Set<Integer> rows, String nameLine) {
    List<List<String>> heads = new ArrayList<>();
    List<String> head = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (rows.contains(i)) {
        head.clear();
      } else if (lines.get(i).equals(nameLine)) {
        heads.add(List.copyOf(head));
        head.clear();
      } else if (!lines.get(i).isBlank()) {
        head.add(lines.get(i));
      }
    }
    return heads;
  }

  /**
   * Marks of the runs by the clock: lines of one kind that stand where the times leap, each time
   * there and nowhere else, whatever they say.
   */
  public static RunMarks atLeaps(List<String> lines, List<Integer> rows, IntPredicate isLeap) {
    Map<String, Integer> atLeaps = new LinkedHashMap<>();
    Map<String, Integer> elsewhere = new HashMap<>();
    Map<String, Integer> ahead = new HashMap<>();
    int leaps = 0;
    for (int i = 0; i < rows.get(0); i++) {
      said(lines.get(i)).ifPresent(words -> ahead.merge(words, 1, Integer::sum));
    }
    for (int r = 1; r < rows.size(); r++) {
      boolean leap = isLeap.test(r);
      leaps += leap ? 1 : 0;
      Set<String> here = new LinkedHashSet<>();
      for (int i = rows.get(r - 1) + 1; i < rows.get(r); i++) {
        said(lines.get(i)).ifPresent(here::add);
      }
      here.forEach(words -> (leap ? atLeaps : elsewhere).merge(words, 1, Integer::sum));
    }
    String begins = "";
    String ends = "";
    for (Map.Entry<String, Integer> entry : atLeaps.entrySet()) {
      boolean each = entry.getValue() == leaps && !elsewhere.containsKey(entry.getKey());
      if (each && ahead.getOrDefault(entry.getKey(), 0) == 1) {
        begins = entry.getKey();
      } else if (each && ends.isEmpty() && !ahead.containsKey(entry.getKey())) {
        ends = entry.getKey();
      }
    }
    Optional<LinePattern> begin = wordsMark(begins, lines, rows);
    Optional<LinePattern> end = wordsMark(ends, lines, rows);
    return begin.isPresent()
        ? new RunMarks(begin, Optional.empty(), false, List.of())
        : new RunMarks(Optional.empty(), end, false, List.of());
  }

  /** What a line says, if it may begin or end a run. */
  private static Optional<String> said(String line) {
    if (line.isBlank() || line.length() > 200) {
      return Optional.empty();
    }
    String words = EventWords.stretch(line);
    if (words.split(" {2,}").length > 2) {
      return Optional.empty(); // names or units of columns
    }
    Words meaning = Words.of(words);
    boolean other = meaning.hasAny("lost", "found", "dither", "settling", "settled");
    return other || words.length() < FEWEST_SIGNS ? Optional.empty() : Optional.of(words);
  }

  private static Optional<LinePattern> wordsMark(
      String words, List<String> lines, List<Integer> rows) {
    if (words.isEmpty()) {
      return Optional.empty();
    }
    LinePattern mark =
        LinePattern.of(
            "(?<!\\p{L})" + LinePattern.quoted(words).replace("\t", "\\t") + "(?!\\p{L})");
    boolean inRows = rows.stream().limit(200).anyMatch(r -> mark.find(lines.get(r)).isPresent());
    return inRows ? Optional.empty() : Optional.of(mark);
  }

  /**
   * Whether marks would mostly cut runs where the clock goes on, and no names stand anew: they mark
   * no runs.
   */
  public static boolean cutsSeamless(
      RunMarks marks,
      Optional<LinePattern> names,
      List<String> lines,
      List<Integer> rows,
      IntPredicate isLate) {
    int seamless = 0;
    int late = 0;
    for (int r = 1; r < rows.size(); r++) {
      boolean cut = false;
      boolean named = false;
      for (int i = rows.get(r - 1) + 1; i < rows.get(r); i++) {
        String line = lines.get(i);
        named |= names.flatMap(pattern -> pattern.find(line)).isPresent();
        cut |=
            Stream.of(marks.begins(), marks.ends())
                .anyMatch(mark -> mark.flatMap(pattern -> pattern.find(line)).isPresent());
      }
      boolean anew = named || isLate.test(r);
      seamless += cut && !anew ? 1 : 0;
      late += cut && anew ? 1 : 0;
    }
    return seamless > late;
  }
}
