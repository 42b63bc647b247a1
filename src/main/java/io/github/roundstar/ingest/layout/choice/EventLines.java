package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.EventRule.Kind;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.text.EventWords;
import io.github.roundstar.ingest.layout.text.Words;
import io.github.roundstar.signal.Quantile;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/** What happened, told by lines between the rows. */
final class EventLines {
  private static final int MOST_RULES = 20;
  private static final int SHORTEST = 3;

  private static final double NEARLY_ALL = 0.9;
  private static final int MOST_STARTS = 300;

  private EventLines() {}

  static double median(List<Double> values) {
    return Quantile.median(values.stream().mapToDouble(v -> v).toArray());
  }

  /** Lines of one kind between the rows, and the rows that follow them. */
  private static final class Family {
    private final String line;
    private final String words;
    private final List<Integer> at = new ArrayList<>();
    private final List<Integer> rows = new ArrayList<>();

    /** The kept row that follows, as far as its values are known. */
    private final List<Integer> known = new ArrayList<>();

    private Optional<Kind> kind;

    Family(String line) {
      this.line = line;
      this.words = EventWords.stretch(line);
      this.kind = EventWords.of(words.isEmpty() ? line : words);
    }

    boolean is(Kind wanted) {
      return kind.filter(wanted::equals).isPresent();
    }

    /** Whether it says that the star was lost or found, which is no end of settling. */
    boolean tellsOfStar() {
      return Words.of(line).hasAny("found", "lost");
    }

    int[] place(int i) {
      return new int[] {at.get(i), rows.get(i)};
    }

    /** Whether nearly each of its lines comes after a start, before any further row. */
    boolean isRightBehind(List<int[]> starts) {
      long behind =
          IntStream.range(0, at.size())
              .filter(i -> starts.stream().anyMatch(s -> s[0] < at.get(i) && s[1] == rows.get(i)))
              .count();
      return behind >= NEARLY_ALL * at.size();
    }

    /** Rows from a start to the line that follows it once; 0 where it is not so. */
    double rowsBehind(List<int[]> starts) {
      int followed = 0;
      double sum = 0;
      for (int s = 0; s < starts.size(); s++) {
        int from = starts.get(s)[0];
        int to = s + 1 < starts.size() ? starts.get(s + 1)[0] : Integer.MAX_VALUE;
        for (int i = 0; i < at.size(); i++) {
          if (at.get(i) > from && at.get(i) < to && rows.get(i) > starts.get(s)[1]) {
            followed++;
            sum += rows.get(i) - starts.get(s)[1];
            break;
          }
        }
      }
      boolean once = followed >= NEARLY_ALL * at.size() && followed * 2 >= starts.size();
      return once && followed > 0 ? sum / followed : 0;
    }
  }

  /**
   * Rules for lines between the rows, each by its words. What the words do not tell, the rows may:
   * a line after which the star is far off tells a dither; one that ends every settling is its end.
   *
   * @param rows the lines that are rows
   * @param rowLike those and such as have their columns in another order
   */
  static List<EventRule> lineRules(
      List<String> lines,
      List<Integer> rows,
      Set<Integer> rowLike,
      Column[] offsets,
      List<Decision> decisions) {
    List<Family> families = families(lines, rows, rowLike);
    Set<String> ahead = new HashSet<>();
    for (int i = 0; i < rows.get(0); i++) {
      ahead.add(EventWords.stretch(lines.get(i)));
    }
    settlingByPlace(families);
    byRows(families, offsets);
    settlingByPlace(families);
    families.stream()
        .filter(f -> f.is(Kind.IDLE) || f.is(Kind.SETTLING))
        .filter(f -> ahead.contains(f.words))
        .forEach(f -> f.kind = Optional.empty()); // what is said before the first row is no pause
    boolean ends = families.stream().anyMatch(f -> f.kind.filter(Kind.GUIDING::equals).isPresent());
    Map<EventRule, Integer> rules = new LinkedHashMap<>();
    for (Kind kind : new LinkedHashSet<>(EventWords.KINDS.values())) {
      List<Family> all =
          families.stream().filter(f -> f.kind.filter(kind::equals).isPresent()).toList();
      boolean lasting = kind == Kind.SETTLING || kind == Kind.IDLE;
      if (all.isEmpty() || lasting && !ends) {
        continue; // what no line ends would last for good; the rows show settling by themselves
      }
      Set<String> words = new LinkedHashSet<>();
      for (Family family : all) {
        if (words.size() < MOST_RULES && words.add(family.words)) {
          String expression = LinePattern.quoted(family.words).replace("\t", "\\t");
          int length = family.words.length();
          if (kind == Kind.DITHER) {
            DitherSize.rule(family.line, expression, decisions)
                .ifPresent(rule -> rules.put(rule, length));
          }
          LinePattern pattern = LinePattern.of("(?<!\\p{L})" + expression);
          rules.put(new EventRule(kind, Optional.of(pattern), List.of()), length);
        }
      }
      decisions.add(
          Decision.certain(
              "lines that tell " + kind.word(),
              words.size() == 1 ? words.iterator().next() : words.size() + " kinds",
              "such as " + all.get(0).line.strip()));
    }
    // the longer words first, since the shorter may be a part of them
    return rules.entrySet().stream()
        .sorted(Comparator.comparingInt(rule -> -rule.getValue()))
        .map(Map.Entry::getKey)
        .toList();
  }

  private static List<Family> families(
      List<String> lines, List<Integer> rows, Set<Integer> rowLike) {
    Map<String, Family> families = new LinkedHashMap<>();
    Set<Integer> rowLines = new HashSet<>(rows);
    int row = 0;
    int kept = 0;
    boolean inOrder = true;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (rowLike.contains(i)) {
        row++;
        inOrder = rowLines.contains(i);
        kept += inOrder ? 1 : 0;
      } else if (row > 0 && !line.isBlank() && line.length() <= 500 && families.size() < 2000) {
        Family family =
            families.computeIfAbsent(line.replaceAll("[0-9]+", "0"), any -> new Family(line));
        family.at.add(i);
        family.rows.add(row);
        if (inOrder) {
          family.known.add(kept);
        }
      }
    }
    return families.values().stream().filter(f -> f.words.length() >= SHORTEST).toList();
  }

  /** A line of unknown words after which the star is far off, time and again, tells of a dither. */
  private static void byRows(List<Family> families, Column[] offsets) {
    double usual = 0;
    double[] size = new double[offsets[0].numbers.length];
    List<Double> sizes = new ArrayList<>();
    for (int i = 0; i < size.length; i++) {
      size[i] = Math.hypot(offsets[0].numbers[i], offsets[1].numbers[i]);
      if (Double.isFinite(size[i])) {
        sizes.add(size[i]);
      }
    }
    usual = sizes.isEmpty() ? Double.NaN : median(sizes);
    for (Family family : families) {
      if (family.isRightBehind(places(families, Kind.DITHER))) {
        continue; // the line before it tells of the dither
      }
      int far = 0;
      double jump = (family.known.size() < 2 ? 2 : 1) * JUMP * usual;
      for (int row : family.known) {
        far += row < size.length && size[row] > jump && size[row] > 2 * size[row - 1] ? 1 : 0;
      }
      if (family.kind.isEmpty() && far >= 1 && far >= 0.7 * family.known.size()) {
        family.kind = Optional.of(Kind.DITHER);
      }
    }
  }

  /**
   * What stands right behind a shift of the set point, before any row, begins the settling; what
   * follows some rows later, once for each shift, ends it: told by their places, whatever they say.
   */
  private static void settlingByPlace(List<Family> families) {
    List<int[]> shifts = places(families, Kind.DITHER);
    for (Family family : families) {
      boolean free = family.kind.isEmpty() || family.is(Kind.IDLE) || family.is(Kind.GUIDING);
      if (free && !family.tellsOfStar() && family.isRightBehind(shifts)) {
        family.kind = Optional.of(Kind.SETTLING);
      }
    }
    List<int[]> starts = shifts.isEmpty() ? places(families, Kind.SETTLING) : shifts;
    boolean begun = families.stream().anyMatch(f -> f.is(Kind.SETTLING) && f.isRightBehind(starts));
    boolean told = families.stream().anyMatch(f -> f.is(Kind.GUIDING) && f.rowsBehind(starts) > 0);
    families.stream()
        .filter(f -> !told && !f.tellsOfStar())
        .filter(f -> f.kind.isEmpty() || f.is(Kind.IDLE) || f.is(Kind.SETTLING))
        .filter(f -> f.rowsBehind(starts) > 0 && (starts.size() > 1 || begun))
        .min(Comparator.comparingDouble(f -> f.rowsBehind(starts)))
        .ifPresent(f -> f.kind = Optional.of(Kind.GUIDING));
  }

  /** Line and row of each line of a kind, in order. */
  private static List<int[]> places(List<Family> families, Kind kind) {
    return families.stream()
        .filter(f -> f.is(kind))
        .flatMap(f -> IntStream.range(0, f.at.size()).mapToObj(f::place))
        .sorted(Comparator.comparingInt(place -> place[0]))
        .limit(MOST_STARTS)
        .toList();
  }

  /** How many times farther off than usual the star is after a dither. */
  static final double JUMP = 3;
}
