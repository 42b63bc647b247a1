package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Finds the lines by which runs begin and end: alike before, or after, each block of rows. */
final class RunLines {
  private static final int FEWEST_SIGNS = 3;
  private static final int LONGEST = 24;

  private RunLines() {}

  /** Marks of the runs; none where the log has one block, or its blocks begin unlike each other. */
  static RunMarks of(List<String> lines, Set<Integer> rows, String nameLine) {
    List<List<String>> heads = heads(lines, rows, nameLine);
    if (nameLine == null || heads.size() < 2) {
      return new RunMarks(Optional.empty(), Optional.empty(), false, List.of());
    }
    Optional<String> begins =
        heads.get(1).stream()
            .map(RunLines::beginning)
            .filter(text -> text.length() >= FEWEST_SIGNS)
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
  static String beginning(String line) {
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
}
