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
import java.util.stream.IntStream;

/**
 * How the rows of a sample are told and taken apart: of all ways to split lines, the one under
 * which most lines have the same, clean fields.
 *
 * @param delimiter what separates fields
 * @param widths widths of fixed fields
 * @param decimalComma whether decimals are written with a comma
 * @param keys keys of the fields, where the rows tell them; else empty
 * @param size number of fields of a row
 * @param rows indices of the lines that are rows
 * @param lead words or brackets in front of the fields
 * @param marked pattern of the rows where other lines have as many fields
 */
record RowShape(
    Delimiter delimiter,
    List<Integer> widths,
    boolean decimalComma,
    List<String> keys,
    int size,
    List<Integer> rows,
    Optional<LinePattern> lead,
    Optional<LinePattern> marked) {
  private static final int FEWEST_ROWS = 3;
  private static final int FEWEST_FIELDS = 3;

  /** Lines by which ways to split are compared; all lines are read by the best one. */
  private static final int COMPARED = 600;

  private static final double CLEAN_POWER = 4;

  /** By how much an unlikely way to split must be better than a likely one. */
  private static final double CLEARLY_BETTER = 1.15;

  /** Below this share of clean fields, a mixture of signs may part them. */
  private static final double UNCLEAN = 0.5;

  static final double CLEAN = 0.97;

  /** What a field looks like. */
  enum Look {
    NUMBER,
    CLOCK,
    LETTERED,
    WORD,
    NONE,
    JUNK;

    boolean isNumeric() {
      return this == NUMBER || this == CLOCK || this == LETTERED;
    }
  }

  /** The shape that makes most lines alike; empty where the text holds no table. */
  static Optional<RowShape> of(List<String> lines) {
    List<String> compared = compared(lines);
    Tally best = null;
    for (Delimiter delimiter :
        List.of(
            Delimiter.SEMICOLON,
            Delimiter.TAB,
            Delimiter.PIPE,
            Delimiter.COMMA,
            Delimiter.BLANKS)) {
      Tally tally = new Tally(compared, delimiter, List.of());
      best =
          tally.score > score(best) * (tally.partsFieldsOf(best) ? 1.5 : CLEARLY_BETTER)
              ? tally
              : best;
    }
    if (best != null && best.delimiter == Delimiter.COMMA) {
      Tally tally = new Tally(compared, Delimiter.COMMA_BLANK, List.of());
      boolean fewer = tally.size < best.size && tally.alike() >= 0.9 * best.alike();
      best = fewer && tally.quality() > 0.95 ? tally : best;
    }
    for (Delimiter delimiter : List.of(Delimiter.JSON, Delimiter.KEY_VALUE)) {
      if (keyedScore(compared, delimiter) > score(best) / CLEARLY_BETTER) {
        return atLeastSome(keyedShape(lines, delimiter));
      }
    }
    boolean words = best != null && best.delimiter == Delimiter.BLANKS;
    if (best == null || best.quality() < (words ? CLEAN : UNCLEAN)) {
      Tally tally = new Tally(compared, Delimiter.ANY, List.of());
      boolean cleaner = best == null || tally.quality() > best.quality();
      boolean same = words && tally.size == best.size; // but for commas behind words
      boolean may = same || best == null || best.quality() < UNCLEAN;
      best = may && cleaner && tally.score > score(best) ? tally : best;
    }
    boolean ragged =
        best == null || best.delimiter == Delimiter.BLANKS || best.delimiter == Delimiter.ANY;
    List<Integer> widths = ragged ? FieldWidths.of(compared) : List.of();
    if (!widths.isEmpty()) {
      Tally tally = new Tally(compared, Delimiter.FIXED, widths);
      double alike = best == null ? 0 : best.alike();
      boolean more = tally.alike() > 1.003 * alike + 2;
      best = more && tally.score > 0.6 * score(best) ? tally : best;
    }
    if (best == null) {
      return Optional.empty();
    }
    Optional<LinePattern> lead = lead(compared, best);
    int size = best.size + (lead.isEmpty() ? 0 : leadWords(compared, best, lead.get()));
    return atLeastSome(shape(lines, best.delimiter, best.widths, size, lead));
  }

  private static final String LEAD_WORD = "(?:\\[[^\\]]*\\]|\\([^)]*\\)|\\S+)";

  /**
   * Words in front of the first field, such as a level or a time in brackets, where another sign
   * than a blank parts the fields.
   */
  private static Optional<LinePattern> lead(List<String> lines, Tally tally) {
    boolean blanks =
        tally.delimiter == Delimiter.BLANKS
            || tally.delimiter == Delimiter.ANY
            || tally.delimiter == Delimiter.FIXED;
    if (blanks) {
      return Optional.empty();
    }
    Map<Integer, Integer> counts = new HashMap<>();
    int rows = 0;
    for (String line : lines) {
      List<String> cells = Cells.of(line, tally.delimiter, tally.widths);
      if (cells.size() == tally.size && worth(cells) > 0) {
        rows++;
        String first = cells.get(0);
        int end = Cells.fieldEnd(line, tally.delimiter.sign(), 0);
        if (end > 0 && !first.isEmpty() && (look(first) == Look.JUNK || hasLead(line))) {
          List<String> words = Cells.of(line.substring(0, end), Delimiter.BLANKS, List.of());
          boolean bracket = line.stripLeading().startsWith("[");
          counts.merge(bracket ? 1 : leadLength(words), 1, Integer::sum);
        }
      }
    }
    for (Map.Entry<Integer, Integer> entry : counts.entrySet()) {
      if (entry.getKey() > 0 && entry.getValue() > 0.6 * rows) {
        String gap = tally.delimiter == Delimiter.TAB ? " +" : "\\s+"; // a tab opens a field
        return Optional.of(LinePattern.of("^\\s*" + (LEAD_WORD + gap).repeat(entry.getKey())));
      }
    }
    return Optional.empty();
  }

  /** The fewest words in front that leave a clean field; 0 where none do. */
  private static int leadLength(List<String> words) {
    for (int count = 1; count < words.size(); count++) {
      boolean clean = words.subList(0, count).stream().allMatch(w -> look(w) != Look.JUNK);
      Look rest = look(String.join(" ", words.subList(count, words.size())));
      boolean sign = count + 1 == words.size() && words.get(count).length() == 1;
      if (clean && (rest.isNumeric() || rest == Look.NONE || sign)) {
        return count;
      }
    }
    return 0;
  }

  /** Whether a bracket or a word that belongs to no date stands in front. */
  private static boolean hasLead(String line) {
    String text = line.stripLeading();
    if (text.startsWith("[") || text.startsWith("(")) {
      return true;
    }
    int blank = text.indexOf(' ');
    String word = blank < 0 ? "" : text.substring(0, blank);
    return !word.isEmpty() && word.chars().allMatch(Character::isLetter) && Words.month(word) == 0;
  }

  private static int leadWords(List<String> lines, Tally tally, LinePattern lead) {
    for (String line : lines) {
      int plain = Cells.of(line, tally.delimiter, tally.widths).size();
      if (plain == tally.size && lead.find(line).isPresent()) {
        return Cells.of(line, tally.delimiter, tally.widths, Optional.of(lead)).size() - plain;
      }
    }
    return 0;
  }

  private static double score(Tally tally) {
    return tally == null ? 0 : tally.score;
  }

  private static Optional<RowShape> atLeastSome(RowShape shape) {
    return Optional.of(shape).filter(found -> found.rows.size() >= FEWEST_ROWS);
  }

  /** Some lines of every part of the log. */
  private static List<String> compared(List<String> lines) {
    if (lines.size() <= COMPARED) {
      return lines;
    }
    List<String> some = new ArrayList<>(lines.subList(0, COMPARED / 3));
    double step = (lines.size() - some.size()) / (COMPARED * 2 / 3.0);
    for (double at = some.size(); at < lines.size(); at += step) {
      some.add(lines.get((int) at));
    }
    return some;
  }

  /** How well one way to split makes lines alike. */
  private static final class Tally {
    private final Map<Integer, Double> scores = new HashMap<>();
    private final Map<Integer, double[]> cleanness = new HashMap<>();
    private final Delimiter delimiter;
    private final List<Integer> widths;
    private int size;
    private double score;

    /** Mean worth of a number in the lines that are alike: 1 where all fields are clean. */
    double quality() {
      double[] sums = cleanness.getOrDefault(size, new double[] {0, 1});
      return sums[0] / Math.max(1, sums[1]);
    }

    /** Whether blanks would part the clean fields of another way, such as a date from its time. */
    boolean partsFieldsOf(Tally other) {
      return other != null
          && delimiter == Delimiter.BLANKS
          && other.quality() > CLEAN
          && other.alike() > CLEAN * alike();
    }

    /** Lines with numbers that are alike. */
    double alike() {
      return cleanness.getOrDefault(size, new double[2])[1];
    }

    Tally(List<String> lines, Delimiter delimiter, List<Integer> widths) {
      this.delimiter = delimiter;
      this.widths = widths;
      for (String line : lines) {
        List<String> cells = Cells.of(line, delimiter, widths);
        if (cells.size() >= FEWEST_FIELDS && cells.size() < Cells.MOST) {
          double worth = worth(cells);
          scores.merge(cells.size(), worth, Double::sum);
          if (worth > 0) {
            long numeric = cells.stream().filter(cell -> look(cell).isNumeric()).count();
            double[] sums = cleanness.computeIfAbsent(cells.size(), any -> new double[2]);
            sums[0] += worth / numeric;
            sums[1]++;
          }
        }
      }
      scores.forEach(
          (fields, sum) -> {
            if (sum > score) {
              score = sum;
              size = fields;
            }
          });
    }
  }

  /** Numbers of a line, less what is neither number, word nor clock; 0 for a line of words. */
  static double worth(List<String> cells) {
    int clean = 0;
    int numeric = 0;
    for (String cell : cells) {
      Look look = look(cell);
      clean += look == Look.JUNK ? 0 : 1;
      numeric += look.isNumeric() ? 1 : 0;
    }
    return numeric < 2 ? 0 : numeric * Math.pow(clean / (double) cells.size(), CLEAN_POWER);
  }

  /** What a field looks like. */
  static Look look(String cell) {
    if (Numbers.isNoValue(cell)) {
      return Look.NONE;
    }
    if (cell.length() > 60) {
      return Look.JUNK;
    }
    if (startsAsNumber(cell)) {
      if (Numbers.of(cell, true).isPresent()) {
        return Look.NUMBER;
      }
      if (isClock(cell)) {
        return Look.CLOCK;
      }
      return isLettered(cell) ? Look.LETTERED : Look.JUNK;
    }
    int digits = 0;
    int others = 0;
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      digits += Character.isDigit(c) ? 1 : 0;
      others +=
          Character.isLetterOrDigit(c) || c == ' ' || c == '-' || c == '_' || c == '.' ? 0 : 1;
    }
    if (digits == 0) {
      return others == 0 && cell.length() <= 30 || cell.length() == 1 ? Look.WORD : Look.JUNK;
    }
    if (isLettered(cell)) {
      return Look.LETTERED;
    }
    return isClock(cell) ? Look.CLOCK : Look.JUNK;
  }

  private static boolean isLettered(String cell) {
    LetteredNumber parts = LetteredNumber.of(cell);
    return cell.indexOf('=') < 0 // a key and its value
        && !parts.number().isEmpty()
        && !parts.word().isEmpty()
        && parts.word().length() <= 8
        && (parts.word().chars().allMatch(Character::isLetter) || parts.word().length() == 1)
        && LetteredNumber.of(cell.replaceFirst("[0-9]*[.,]?[0-9]+([eE][+-]?[0-9]+)?", ""))
            .number()
            .isEmpty();
  }

  private static boolean isClock(String cell) {
    ClockText read = ClockText.of(cell, TimeForm.DateOrder.DMY);
    return read.time().isPresent()
        || read.date().isPresent()
        || ClockText.of(cell, TimeForm.DateOrder.MDY).date().isPresent()
        || ClockText.elapsedSeconds(cell).isPresent();
  }

  static boolean startsAsNumber(String cell) {
    int at = !cell.isEmpty() && "+-\u2212".indexOf(cell.charAt(0)) >= 0 ? 1 : 0;
    at += cell.length() > at && ".,".indexOf(cell.charAt(at)) >= 0 ? 1 : 0;
    return cell.length() > at && cell.charAt(at) >= '0' && cell.charAt(at) <= '9';
  }

  private static RowShape shape(
      List<String> lines,
      Delimiter delimiter,
      List<Integer> widths,
      int size,
      Optional<LinePattern> lead) {
    List<Integer> like = new ArrayList<>();
    List<List<String>> all = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      List<String> cells = Cells.of(lines.get(i), delimiter, widths, lead);
      if (cells.size() == size && Cells.keepWidths(lines.get(i), widths)) {
        like.add(i);
        all.add(cells);
      }
    }
    RowLooks looks = new RowLooks(all, size);
    List<Integer> rows = new ArrayList<>();
    for (int r = 0; r < all.size(); r++) {
      if (looks.fits(all.get(r))) {
        rows.add(like.get(r));
      }
    }
    return new RowShape(
        delimiter, widths, looks.decimalComma(), List.of(), size, rows, lead, Optional.empty());
  }

  private static double keyedScore(List<String> lines, Delimiter delimiter) {
    double score = 0;
    Set<String> keys = coreKeys(lines, delimiter);
    if (keys.size() < FEWEST_FIELDS) {
      return 0;
    }
    for (String line : lines) {
      Map<String, String> fields = Cells.keyed(line, delimiter);
      if (hasMost(fields, keys)) {
        score += worth(List.copyOf(fields.values()));
      }
    }
    return score;
  }

  private static boolean hasMost(Map<String, String> fields, Set<String> keys) {
    List<String> told = keys.stream().filter(key -> !key.startsWith("#")).toList();
    return told.stream().filter(fields::containsKey).count() >= Math.max(2, 0.3 * told.size());
  }

  /** Keys that most lines with numbers have, at least one of them told by the line itself. */
  private static Set<String> coreKeys(List<String> lines, Delimiter delimiter) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    int most = 0;
    for (String line : lines) {
      Map<String, String> fields = Cells.keyed(line, delimiter);
      long told = fields.keySet().stream().filter(key -> !key.startsWith("#")).count();
      if (told >= 2 && fields.size() >= FEWEST_FIELDS && worth(List.copyOf(fields.values())) > 0) {
        for (String key : fields.keySet()) {
          most = Math.max(most, counts.merge(key, 1, Integer::sum));
        }
      }
    }
    Set<String> core = new LinkedHashSet<>();
    for (Map.Entry<String, Integer> entry : counts.entrySet()) {
      if (most >= FEWEST_ROWS && entry.getValue() > 0.6 * most) {
        core.add(entry.getKey());
      }
    }
    return core;
  }

  private static RowShape keyedShape(List<String> lines, Delimiter delimiter) {
    Set<String> core = coreKeys(compared(lines), delimiter);
    Map<String, Integer> counts = new LinkedHashMap<>();
    List<Integer> rows = new ArrayList<>();
    int commas = 0;
    int points = 0;
    for (int i = 0; i < lines.size(); i++) {
      Map<String, String> fields = Cells.keyed(lines.get(i), delimiter);
      if (hasMost(fields, core) && worth(List.copyOf(fields.values())) > 0) {
        rows.add(i);
        for (Map.Entry<String, String> field : fields.entrySet()) {
          counts.merge(field.getKey(), 1, Integer::sum);
          if (rows.size() < 300 && look(field.getValue()) == Look.NUMBER) {
            commas += field.getValue().indexOf(',') >= 0 ? 1 : 0;
            points += field.getValue().indexOf('.') >= 0 ? 1 : 0;
          }
        }
      }
    }
    List<String> keys = new ArrayList<>();
    int few = Math.max(2, rows.size() / 500);
    counts.forEach(
        (key, count) -> {
          if (count >= few) {
            keys.add(key);
          }
        });
    return new RowShape(
        delimiter,
        List.of(),
        commas > points,
        keys,
        keys.size(),
        rows,
        Optional.empty(),
        Optional.empty());
  }

  /** The fields of a row, in the order of the keys where it tells them. */
  List<String> cells(String line) {
    if (!delimiter.isKeyed()) {
      return Cells.of(line, delimiter, widths, lead);
    }
    Map<String, String> fields = Cells.keyed(line, delimiter);
    List<String> cells = new ArrayList<>(keys.size());
    for (String key : keys) {
      cells.add(fields.getOrDefault(key, ""));
    }
    return cells;
  }

  /** The same with some of its rows. */
  RowShape withRows(List<Integer> kept) {
    return new RowShape(delimiter, widths, decimalComma, keys, size, kept, lead, marked);
  }

  /**
   * The same, its rows told by the word that all of them begin with, where other tables lack it.
   */
  RowShape marked(List<String> lines) {
    String word = cells(lines.get(rows.get(0))).get(0);
    boolean letters = !word.isEmpty() && word.chars().allMatch(Character::isLetter);
    if (!letters || word.length() > 12) {
      return this;
    }
    LinePattern mark = LinePattern.of("^\\P{L}*" + word + "(?!\\p{L})");
    boolean all = rows.stream().allMatch(row -> mark.find(lines.get(row)).isPresent());
    Set<Integer> own = new HashSet<>(rows);
    boolean others =
        IntStream.range(0, lines.size())
            .filter(i -> !own.contains(i) && mark.find(lines.get(i)).isEmpty())
            .anyMatch(i -> worth(Cells.of(lines.get(i), delimiter, widths)) > 0);
    return all && others
        ? new RowShape(delimiter, widths, decimalComma, keys, size, rows, lead, Optional.of(mark))
        : this;
  }
}
