package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.Delimiter;
import io.github.roundstar.ingest.layout.LinePattern;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The way to split the lines of a log: of all ways, the one under which most lines have the same,
 * clean fields.
 *
 * @param delimiter what separates fields
 * @param widths widths of fixed fields
 * @param size fields of a row; 0 where rows tell keys
 * @param lead words or brackets in front of the fields
 * @param runnerUp the next best way, for people
 */
record Splitting(
    Delimiter delimiter,
    List<Integer> widths,
    int size,
    Optional<LinePattern> lead,
    String runnerUp) {
  private static final int FEWEST_ROWS = 3;
  private static final int FEWEST_FIELDS = 3;

  /** Lines by which ways to split are compared; all lines are read by the best one. */
  private static final int COMPARED = 600;

  /** By how much an unlikely way to split must be better than a likely one. */
  private static final double CLEARLY_BETTER = 1.15;

  /** Below this share of clean fields, a mixture of signs may part them. */
  private static final double UNCLEAN = 0.5;

  static final double CLEAN = 0.97;

  /** The best way; empty where the text holds no table. */
  static Optional<Splitting> of(List<String> lines) {
    List<String> compared = compared(lines);
    Map<Delimiter, Double> scores = new LinkedHashMap<>();
    Tally best = separated(compared, scores);
    for (Delimiter delimiter : List.of(Delimiter.JSON, Delimiter.KEY_VALUE)) {
      double keyed = keyedScore(compared, delimiter);
      scores.put(delimiter, keyed);
      if (keyed > score(best) / CLEARLY_BETTER) {
        String next = runnerUp(scores, delimiter);
        return Optional.of(new Splitting(delimiter, List.of(), 0, Optional.empty(), next));
      }
    }
    best = mixed(compared, best, scores);
    best = fixed(compared, best, scores);
    if (best == null) {
      return Optional.empty();
    }
    Optional<LinePattern> lead = lead(compared, best);
    int size = best.size + (lead.isEmpty() ? 0 : leadWords(compared, best, lead.get()));
    return Optional.of(
        new Splitting(best.delimiter, best.widths, size, lead, runnerUp(scores, best.delimiter)));
  }

  /** The best of the ways that have one sign between fields. */
  private static Tally separated(List<String> lines, Map<Delimiter, Double> scores) {
    Tally best = null;
    for (Delimiter delimiter :
        List.of(
            Delimiter.SEMICOLON,
            Delimiter.TAB,
            Delimiter.PIPE,
            Delimiter.COMMA,
            Delimiter.BLANKS)) {
      Tally tally = new Tally(lines, delimiter, List.of());
      scores.put(delimiter, tally.score);
      double margin = tally.partsFieldsOf(best) ? 1.5 : CLEARLY_BETTER;
      best = tally.score > score(best) * margin ? tally : best;
    }
    if (best != null && best.delimiter == Delimiter.COMMA) {
      Tally tally = new Tally(lines, Delimiter.COMMA_BLANK, List.of());
      scores.put(Delimiter.COMMA_BLANK, tally.score);
      boolean fewer = tally.size < best.size && tally.alike() >= 0.9 * best.alike();
      best = fewer && tally.quality() > 0.95 ? tally : best;
    }
    return best;
  }

  /** Any run of signs, where no single sign leaves clean fields. */
  private static Tally mixed(List<String> lines, Tally best, Map<Delimiter, Double> scores) {
    boolean words = best != null && best.delimiter == Delimiter.BLANKS;
    if (best != null && best.quality() >= (words ? CLEAN : UNCLEAN)) {
      return best;
    }
    Tally tally = new Tally(lines, Delimiter.ANY, List.of());
    scores.put(Delimiter.ANY, tally.score);
    boolean cleaner = best == null || tally.quality() > best.quality();
    boolean same = words && tally.size == best.size; // but for commas behind words
    boolean may = same || best == null || best.quality() < UNCLEAN;
    return may && cleaner && tally.score > score(best) ? tally : best;
  }

  /** Fields of fixed width, where words leave lines unlike each other. */
  private static Tally fixed(List<String> lines, Tally best, Map<Delimiter, Double> scores) {
    boolean ragged =
        best == null || best.delimiter == Delimiter.BLANKS || best.delimiter == Delimiter.ANY;
    List<Integer> widths = ragged ? FieldWidths.of(lines) : List.of();
    if (widths.isEmpty()) {
      return best;
    }
    Tally tally = new Tally(lines, Delimiter.FIXED, widths);
    scores.put(Delimiter.FIXED, tally.score);
    double alike = best == null ? 0 : best.alike();
    boolean more = tally.alike() > 1.003 * alike + 2;
    return more && tally.score > 0.6 * score(best) ? tally : best;
  }

  private static String runnerUp(Map<Delimiter, Double> scores, Delimiter best) {
    return scores.entrySet().stream()
        .filter(way -> way.getKey() != best && way.getValue() > 0)
        .max(Map.Entry.comparingByValue())
        .map(
            way ->
                String.format(
                    Locale.ROOT,
                    "%s, %.0f %% as much in clean numbers of lines that are alike",
                    way.getKey().word(),
                    100 * way.getValue() / Math.max(1e-9, scores.get(best))))
        .orElse("no other way parts lines into numbers");
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
      if (cells.size() == tally.size && Look.worth(cells) > 0) {
        rows++;
        String first = cells.get(0);
        int end = Cells.fieldEnd(line, tally.delimiter.sign(), 0);
        if (end > 0 && !first.isEmpty() && (Look.of(first) == Look.JUNK || hasLead(line))) {
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
      boolean clean = words.subList(0, count).stream().allMatch(w -> Look.of(w) != Look.JUNK);
      Look rest = Look.of(String.join(" ", words.subList(count, words.size())));
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

  /** Some lines of every part of the log. */
  static List<String> compared(List<String> lines) {
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
          Look[] looks = cells.stream().map(Look::of).toArray(Look[]::new);
          double worth = Look.worth(looks);
          scores.merge(cells.size(), worth, Double::sum);
          if (worth > 0) {
            long numeric = Arrays.stream(looks).filter(Look::isNumeric).count();
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

  private static double keyedScore(List<String> lines, Delimiter delimiter) {
    double score = 0;
    Set<String> keys = coreKeys(lines, delimiter);
    if (keys.size() < FEWEST_FIELDS) {
      return 0;
    }
    for (String line : lines) {
      Map<String, String> fields = Cells.keyed(line, delimiter);
      if (hasMost(fields, keys)) {
        score += Look.worth(List.copyOf(fields.values()));
      }
    }
    return score;
  }

  static boolean hasMost(Map<String, String> fields, Set<String> keys) {
    List<String> told = keys.stream().filter(key -> !key.startsWith("#")).toList();
    return told.stream().filter(fields::containsKey).count() >= Math.max(2, 0.3 * told.size());
  }

  /** Keys that most lines with numbers have, at least one of them told by the line itself. */
  static Set<String> coreKeys(List<String> lines, Delimiter delimiter) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    int most = 0;
    for (String line : lines) {
      Map<String, String> fields = Cells.keyed(line, delimiter);
      long told = fields.keySet().stream().filter(key -> !key.startsWith("#")).count();
      if (told >= 2
          && fields.size() >= FEWEST_FIELDS
          && Look.worth(List.copyOf(fields.values())) > 0) {
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
}
