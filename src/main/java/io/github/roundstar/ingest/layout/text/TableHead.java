package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.RunMarks;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What stands around the rows of a sample: names, units, and other lines.
 *
 * @param nameLine index of the line of names; negative if there is none
 * @param nameCells the names; empty ones where nothing tells them
 * @param unitCells units in the line below the names; empty if there is none
 * @param byName whether the layout can find columns by these names
 * @param others lines that are no rows, no names and no units
 * @param between those of them after the first row
 * @param names pattern of the line of names
 * @param remark pattern of lines that begin with a sign as rows never do
 * @param runs where runs begin and end
 */
public record TableHead(
    int nameLine,
    List<String> nameCells,
    List<String> unitCells,
    boolean byName,
    List<String> others,
    List<String> between,
    Optional<LinePattern> names,
    Optional<LinePattern> remark,
    RunMarks runs) {
  static final String SIGNS = "#!%*;>=/'";

  public static TableHead of(List<String> lines, RowShape shape) {
    int first = shape.rows().get(0);
    ColumnNames found =
        shape.delimiter().isKeyed() ? ColumnNames.keyed(shape) : ColumnNames.above(lines, shape);
    String nameLine = found.nameAt < 0 ? null : lines.get(found.nameAt);
    String unitLine = found.unitAt < 0 ? null : lines.get(found.unitAt);
    Set<Integer> rows = new HashSet<>(shape.rows());
    List<String> others = new ArrayList<>();
    List<String> between = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (!rows.contains(i)
          && !line.isBlank()
          && !line.equals(nameLine)
          && !line.equals(unitLine)) {
        others.add(line);
        if (i > first) {
          between.add(line);
        }
      }
    }
    return new TableHead(
        found.nameAt,
        found.names,
        found.units,
        found.byName,
        others,
        between,
        Optional.ofNullable(found.byName ? nameLine : null)
            .map(any -> namesPattern(lines, shape, found)),
        remark(between, lines, shape),
        RunLines.of(lines, rows, nameLine));
  }

  /**
   * Whether two lines name the same columns, in whatever order; a log may change the order where it
   * begins anew.
   */
  static boolean areSameNames(List<String> one, List<String> other) {
    return one.size() == other.size()
        && one.stream().sorted().toList().equals(other.stream().sorted().toList());
  }

  /** The rows that stand under names in the order of the first ones. */
  public List<Integer> rowsInOrder(List<String> lines, RowShape shape) {
    if (!byName || shape.delimiter().isKeyed() || nameLine < 0) {
      return shape.rows();
    }
    List<Integer> kept = new ArrayList<>();
    Set<Integer> rows = new HashSet<>(shape.rows());
    boolean inOrder = true;
    for (int i = 0; i < lines.size(); i++) {
      if (rows.contains(i)) {
        if (inOrder) {
          kept.add(i);
        }
      } else if (lines.get(i).length() < 4000 && isNames(lines, i, shape, nameCells)) {
        inOrder = ColumnNames.names(lines, i, shape).equals(nameCells);
      }
    }
    return kept;
  }

  /** The lines with those that name the columns, in whatever order, left blank. */
  public List<String> withoutNames(List<String> lines, RowShape shape) {
    List<String> all = new ArrayList<>(lines);
    for (int i = 0; i < lines.size() && nameLine >= 0; i++) {
      boolean like = mayName(lines.get(i)) && !shape.delimiter().isKeyed();
      if (like && isSameWords(lines.get(i), lines.get(nameLine))) {
        all.set(i, "");
      }
    }
    return all;
  }

  /** Whether a line read by the places of its fields names them in another order later on. */
  public OptionalInt reordered(List<String> lines, RowShape shape) {
    for (int i = nameLine + 1; i < lines.size() && nameLine >= 0 && !byName; i++) {
      boolean like = mayName(lines.get(i)) && !shape.delimiter().isKeyed();
      boolean same = like && isSameWords(lines.get(i), lines.get(nameLine));
      if (same && !Words.tokens(lines.get(i)).equals(Words.tokens(lines.get(nameLine)))) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  /** The line of names, later on, whose line of units gives a column another one than the first. */
  public OptionalInt otherUnits(List<String> lines, RowShape shape) {
    for (int i = nameLine + 2; i + 1 < lines.size() && byName && !unitCells.isEmpty(); i++) {
      boolean like = lines.get(i).length() < 4000 && isNames(lines, i, shape, nameCells);
      List<String> names = like ? ColumnNames.names(lines, i, shape) : List.of();
      List<String> units = like ? ColumnNames.names(lines, i + 1, shape) : List.of();
      for (int c = 0; c < names.size() && units.size() == names.size() && areUnits(units); c++) {
        int first = nameCells.indexOf(names.get(c));
        if (!names.get(c).isEmpty() && !units.get(c).equals(unitCells.get(first))) {
          return OptionalInt.of(i);
        }
      }
    }
    return OptionalInt.empty();
  }

  /** Names are more letters than digits. */
  private static boolean mayName(String line) {
    int letters = 0;
    for (int i = 0; i < line.length() && i < 4000; i++) {
      char c = line.charAt(i);
      letters += c >= '0' && c <= '9' ? -1 : Character.isLetter(c) ? 1 : 0;
    }
    return letters > 0 && line.length() < 4000;
  }

  private static boolean isSameWords(String one, String other) {
    return Math.abs(one.strip().length() - other.strip().length()) <= 40
        && Words.tokens(one).stream()
            .sorted()
            .toList()
            .equals(Words.tokens(other).stream().sorted().toList());
  }

  public static boolean isNames(List<String> lines, int line, RowShape shape, List<String> names) {
    return areSameNames(ColumnNames.names(lines, line, shape), names);
  }

  /** The pattern of all lines that name the columns. */
  private static LinePattern namesPattern(List<String> lines, RowShape shape, ColumnNames found) {
    Set<String> all = new LinkedHashSet<>();
    all.add(lines.get(found.nameAt));
    String begin = lines.get(found.nameAt).substring(0, 1);
    for (int i = 0; i < lines.size() && !shape.delimiter().isKeyed(); i++) {
      String line = lines.get(i);
      boolean like = line.length() < 4000 && (line.startsWith(begin) || isRemark(line));
      if (like && all.size() < 6 && isNames(lines, i, shape, found.names)) {
        all.add(line);
      }
    }
    if (all.size() == 1 && shape.lead().isPresent()) {
      String line = lines.get(found.nameAt);
      int from = shape.lead().get().find(line).map(Matcher::end).orElse(0);
      return LinePattern.of(beginningOf(line.substring(from)).expression().substring(4));
    }
    if (all.size() == 1) {
      return beginningOf(lines.get(found.nameAt));
    }
    List<String> each =
        all.stream().map(line -> beginningOf(line).expression().substring(4)).toList();
    return LinePattern.of("^\\s*(?:" + String.join("|", each) + ")");
  }

  static LinePattern beginningOf(String line) {
    String text = line.stripLeading();
    return LinePattern.of(
        "^\\s*"
            + LinePattern.quoted(text.substring(0, Math.min(60, text.length())))
                .replace("\t", "\\t"));
  }

  /** Whether a field is nothing but the sign of a remark. */
  static boolean isMark(String cell) {
    return !cell.isEmpty() && withoutMark(cell).isEmpty();
  }

  /** A text without the sign of a remark in front. */
  public static String withoutMark(String text) {
    int at = 0;
    while (text.startsWith("--") && at < text.length() && text.charAt(at) == '-') {
      at++;
    }
    while (at < text.length() && (SIGNS.indexOf(text.charAt(at)) >= 0 || text.charAt(at) == ' ')) {
      at++;
    }
    return text.substring(at);
  }

  private static final Pattern LEAD =
      Pattern.compile(
          "^(?:\\[[^\\]]{1,40}\\]|\\([0-9][^)]{1,40}\\)|[0-9]{4}-?[0-9]{2}-?[0-9]{2}[T ][0-9:.,]{6,15}Z?|\\p{Lu}{3,8}:?(?= {2,}|\\t)"
              + "|\\p{Lu}(?=[ ,;|\\t]))[ ,;|\\t]+");

  /** A line of JSON that holds one text. */
  private static final Pattern JSON_REMARK =
      Pattern.compile("\\s*\\{\\s*\"[^\"]*\"\\s*:\\s*\"(.*)\"\\s*\\}\\s*");

  /** A sentence without what leads every line, such as a time in brackets or a level. */
  public static String withoutLead(String line) {
    Matcher remark = JSON_REMARK.matcher(line);
    String rest = remark.matches() ? remark.group(1) : withoutMark(line);
    for (int i = 0; i < 3; i++) {
      Matcher lead = LEAD.matcher(rest);
      if (!lead.find()) {
        break;
      }
      rest = withoutMark(rest.substring(lead.end()));
    }
    return rest;
  }

  static boolean isWords(List<String> cells) {
    List<String> filled = cells.stream().filter(c -> !c.isEmpty()).toList();
    List<String> words = filled.stream().filter(c -> Numbers.of(c, true).isEmpty()).toList();
    long distinct = words.stream().distinct().count();
    boolean most = distinct * 3 >= cells.size() * 2L;
    boolean all = words.equals(filled) && filled.size() * 2 >= cells.size();
    return (most || all)
        && distinct >= 2
        && cells.stream().noneMatch(Look::startsAsNumber)
        && cells.stream().allMatch(c -> c.length() <= 80)
        && cells.stream().filter(c -> c.chars().anyMatch(Character::isLetter)).count() * 3
            >= cells.size();
  }

  static boolean areUnits(List<String> cells) {
    long units = cells.stream().filter(cell -> Words.unit(cell).isPresent()).count();
    return units * 2 >= cells.stream().filter(c -> c.length() > 1).count() && units >= 2;
  }

  /** Whether a line begins as rows never do. */
  static boolean isRemark(String line) {
    return !line.isEmpty() && SIGNS.indexOf(line.charAt(0)) >= 0;
  }

  private static Optional<LinePattern> remark(
      List<String> between, List<String> lines, RowShape shape) {
    Set<Character> signs = new TreeSet<>();
    for (String line : between) {
      if (isRemark(line)) {
        signs.add(line.charAt(0));
      }
    }
    for (int row : shape.rows()) {
      if (!lines.get(row).isEmpty()) {
        signs.remove(lines.get(row).charAt(0));
      }
    }
    if (signs.isEmpty()) {
      return Optional.empty();
    }
    StringBuilder all = new StringBuilder();
    signs.forEach(all::append);
    return Optional.of(LinePattern.of("^[" + all + "]"));
  }

  /** The lines before the first row. */
  public List<String> header() {
    return others.subList(0, others.size() - between.size());
  }
}
