package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.EventRule.Kind;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.text.EventWords;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * What happened, told by lines between the rows. Where lines stand and what the rows after them
 * show goes before what their words seem to say, since the same words are used of the star, of the
 * mount and of the loop: a line before rows in which nothing was measured tells of a lost star; one
 * after which the star is far off, of a dither; one right behind a dither begins the settling; what
 * follows once each time, some rows later, ends it; and no pause has pulses in it.
 */
final class EventLines {
  private static final int MOST_RULES = 20;
  private static final int SHORTEST = 3;
  private static final double NEARLY_ALL = 0.9;
  private static final double MOST = 0.7;
  private static final int MOST_STARTS = 300;

  /** Settling that no word ends takes no more rows than these. */
  private static final double LONGEST = 40;

  /** Where a line stands: its number, the row after it of all, and of those in the usual order. */
  private record Place(int line, int row, int known) {}

  /** Lines of one kind between the rows. */
  private static final class Family {
    private final String line;
    private final String words;
    private final List<Place> places = new ArrayList<>();
    private Optional<Kind> kind;

    Family(String line) {
      this.line = line;
      this.words = EventWords.stretch(line);
      this.kind = EventWords.of(words.isEmpty() ? line : words);
    }

    boolean is(Kind... wanted) {
      return kind.filter(k -> List.of(wanted).contains(k)).isPresent();
    }

    /** Whether it says that the star was lost or found, which is no end of settling. */
    boolean tellsOfStar() {
      return Words.of(line).hasAny("found", "lost");
    }

    /** Share of its lines whose next row passes a test. */
    double share(IntPredicate test) {
      long passed = places.stream().filter(p -> p.known >= 0 && test.test(p.known)).count();
      long known = places.stream().filter(p -> p.known >= 0).count();
      return known == 0 ? 0 : passed / (double) known;
    }

    /** Whether nearly each of its lines comes after one of some others, before any further row. */
    boolean isRightBehind(List<Place> starts) {
      long behind =
          places.stream()
              .filter(p -> starts.stream().anyMatch(s -> s.line < p.line && s.row == p.row))
              .count();
      return behind >= NEARLY_ALL * places.size();
    }

    /** Rows from a start to the line that follows it once; 0 where it is not so. */
    double rowsBehind(List<Place> starts) {
      int followed = 0;
      double sum = 0;
      for (int s = 0; s < starts.size(); s++) {
        Place end = next(starts.get(s), s + 1 < starts.size() ? starts.get(s + 1).line : -1);
        followed += end == null ? 0 : 1;
        sum += end == null ? 0 : end.row - starts.get(s).row;
      }
      boolean once = followed >= NEARLY_ALL * places.size() && followed * 2 >= starts.size();
      return once && followed > 0 ? sum / followed : 0;
    }

    /** Whether guiding is told anew before nearly every row, and so ends whatever was before. */
    boolean tellsOfEachRow(int rows) {
      return is(Kind.GUIDING) && places.size() >= MOST * rows;
    }

    /** The first of its lines after a place, with rows between, and before another line. */
    private Place next(Place start, int before) {
      return places.stream()
          .filter(p -> p.line > start.line && p.row > start.row)
          .filter(p -> before < 0 || p.line < before)
          .findFirst()
          .orElse(null);
    }
  }

  private final List<Family> families;
  private final ShownRows rows;
  private final List<Decision> decisions;

  private EventLines(List<Family> families, ShownRows rows, List<Decision> decisions) {
    this.families = families;
    this.rows = rows;
    this.decisions = decisions;
  }

  /**
   * Rules for lines between the rows, each by its words.
   *
   * @param kept the lines that are rows
   * @param rowLike those and such as have their columns in another order
   */
  static List<EventRule> lineRules(
      List<String> lines,
      List<Integer> kept,
      Set<Integer> rowLike,
      ShownRows rows,
      List<Decision> decisions) {
    EventLines events = new EventLines(families(lines, kept, rowLike, rows), rows, decisions);
    Set<String> ahead = new HashSet<>();
    for (int i = 0; i < kept.get(0); i++) {
      ahead.add(EventWords.stretch(lines.get(i)));
    }
    events.families.stream()
        .filter(f -> f.is(Kind.IDLE, Kind.SETTLING) && ahead.contains(f.words))
        .forEach(f -> f.kind = Optional.empty()); // what is said before the first row is no pause
    events.lost();
    events.dithers();
    events.settling();
    events.pauses();
    return events.rules();
  }

  private static List<Family> families(
      List<String> lines, List<Integer> kept, Set<Integer> rowLike, ShownRows rows) {
    Map<String, Family> families = new LinkedHashMap<>();
    Set<Integer> keptLines = new HashSet<>(kept);
    int row = 0;
    int known = 0;
    boolean inOrder = true;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (rowLike.contains(i)) {
        row++;
        inOrder = keptLines.contains(i);
        known += inOrder ? 1 : 0;
      } else if (row > 0 && !line.isBlank() && line.length() <= 500 && families.size() < 2000) {
        families
            .computeIfAbsent(line.replaceAll("[0-9]+", "0"), any -> new Family(line))
            .places
            .add(new Place(i, row, inOrder && known < rows.count() ? known : -1));
      }
    }
    int last = row;
    families.values().forEach(f -> f.places.removeIf(p -> p.row == last)); // nothing follows
    return families.values().stream()
        .filter(f -> f.words.length() >= SHORTEST && !f.places.isEmpty())
        .toList();
  }

  /** Lines before rows without a star, or in place of rows, whatever they wait for. */
  private void lost() {
    for (Family family : families) {
      boolean free = family.kind.isEmpty() || family.is(Kind.IDLE, Kind.GUIDING);
      boolean begins =
          family.share(i -> i > 0 && rows.isMissing(i) && !rows.isMissing(i - 1)) >= MOST;
      boolean back = Words.of(family.line).has("found");
      if (free && begins && !back) {
        family.kind = Optional.of(Kind.LOST);
      }
    }
  }

  /** A line after which the star is far off, time and again, tells of a dither. */
  private void dithers() {
    for (Family family : families) {
      boolean alone = family.places.size() < 2;
      boolean free = family.kind.isEmpty() || family.is(Kind.IDLE, Kind.GUIDING);
      boolean far =
          free && !family.tellsOfStar() && family.share(i -> rows.jumps(i, alone)) >= MOST;
      if (far && !family.isRightBehind(places(Kind.DITHER))) {
        family.kind = Optional.of(Kind.DITHER);
      }
    }
    if (places(Kind.DITHER).isEmpty()) {
      // two lines that always come together, and a third some rows later: a move too small to show
      for (Family first : families) {
        for (Family second : families) {
          boolean free = first.kind.isEmpty() || first.is(Kind.GUIDING);
          boolean pair =
              free
                  && first != second
                  && first.share(rows::isBroken) < MOST
                  && first.places.size() == second.places.size()
                  && second.isRightBehind(first.places);
          boolean settles =
              families.stream()
                  .filter(f -> f != first && f != second && !f.tellsOfStar())
                  .filter(f -> f.places.size() > 1 || Words.of(f.line).has("settled"))
                  .anyMatch(f -> f.rowsBehind(second.places) > 0);
          if (pair && settles && !first.tellsOfStar()) {
            first.kind = Optional.of(Kind.DITHER);
          }
        }
      }
    }
  }

  /** What begins and what ends settling. */
  private void settling() {
    List<Place> dithers = places(Kind.DITHER);
    families.stream()
        .filter(f -> f.kind.isEmpty() || f.is(Kind.IDLE, Kind.GUIDING))
        .filter(f -> !f.tellsOfStar() && f.isRightBehind(dithers))
        .forEach(f -> f.kind = Optional.of(Kind.SETTLING));
    Optional<Family> end =
        families.stream()
            .filter(f -> f.kind.isEmpty() || f.is(Kind.IDLE, Kind.GUIDING, Kind.SETTLING))
            .filter(f -> !f.tellsOfStar())
            .filter(f -> f.rowsBehind(settlingWithout(f)) > 0 || f.tellsOfEachRow(rows.count()))
            .filter(f -> f.kind.isPresent() || f.rowsBehind(settlingWithout(f)) < LONGEST)
            .min(Comparator.comparingDouble(f -> f.rowsBehind(settlingWithout(f))));
    end.ifPresent(f -> f.kind = Optional.of(Kind.GUIDING));
    for (Family family : families) {
      if (family.is(Kind.SETTLING) && end.isEmpty()) {
        family.kind = Optional.empty(); // it would last for good; the rows show by themselves
      } else if (end.isPresent() && family != end.get() && family.is(Kind.IDLE, Kind.GUIDING)) {
        boolean within =
            places(Kind.SETTLING).stream()
                .anyMatch(
                    s -> {
                      Place stop = end.get().next(s, -1);
                      return stop != null
                          && family.places.stream()
                              .anyMatch(p -> p.line > s.line && p.line < stop.line);
                    });
        family.kind = within ? Optional.empty() : family.kind;
      }
    }
  }

  /** Lines that tell of settling, but for those of one family, which may name what it ends. */
  private List<Place> settlingWithout(Family family) {
    List<Place> all = new ArrayList<>(places(Kind.SETTLING));
    all.removeAll(family.places);
    return all;
  }

  /** A pause in which pulses go on is none, nor is one that no line ends. */
  private void pauses() {
    List<Place> ends = places(Kind.GUIDING, Kind.DITHER, Kind.SETTLING);
    for (Family family : families) {
      if (!family.is(Kind.IDLE)) {
        continue;
      }
      List<Integer> within = new ArrayList<>();
      for (Place place : family.places) {
        int stop =
            ends.stream()
                .filter(e -> e.line > place.line)
                .mapToInt(e -> e.known)
                .findFirst()
                .orElse(rows.count());
        IntStream.range(Math.max(0, place.known), Math.max(0, stop)).forEach(within::add);
      }
      boolean unseen = family.places.stream().anyMatch(p -> p.known < 0);
      boolean measured = unseen || within.stream().anyMatch(i -> !rows.isMissing(i));
      boolean goesOn = rows.showPauses() && rows.goesOn(within);
      boolean ended = families.stream().anyMatch(f -> f.is(Kind.GUIDING));
      boolean once =
          families.stream().anyMatch(f -> f.is(Kind.GUIDING) && f.rowsBehind(family.places) > 0);
      boolean gap = family.share(rows::isBroken) >= MOST; // which is the pause itself
      if (goesOn || !ended || gap && !rows.showPauses()) {
        family.kind = Optional.empty();
      } else if (measured && (unseen || !rows.showPauses()) && !once) {
        family.kind = Optional.empty();
        decisions.add(
            Decision.open(
                "pauses",
                "the line '"
                    + family.line.strip()
                    + "' may begin one, rows with a star follow, and no line ends each of them",
                "[[event]]\nmeans = \"idle\"   # or note\nline = '"
                    + LinePattern.quoted(family.words)
                    + "'"));
      }
    }
  }

  /** Lines of some kinds, in order. */
  private List<Place> places(Kind... kinds) {
    return families.stream()
        .filter(f -> f.is(kinds))
        .flatMap(f -> f.places.stream())
        .sorted(Comparator.comparingInt(Place::line))
        .limit(MOST_STARTS)
        .toList();
  }

  /** The longer words first, since the shorter may be a part of them. */
  private List<EventRule> rules() {
    Map<EventRule, Integer> rules = new LinkedHashMap<>();
    for (Kind kind : new LinkedHashSet<>(EventWords.KINDS.values())) {
      List<Family> all = families.stream().filter(f -> f.is(kind)).toList();
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
      if (!all.isEmpty()) {
        decisions.add(
            Decision.certain(
                "lines that tell " + kind.word(),
                words.size() == 1 ? words.iterator().next() : words.size() + " kinds",
                "such as " + all.get(0).line.strip()));
      }
    }
    for (Family family : families) {
      boolean hidden =
          family.kind.isEmpty()
              && rules.keySet().stream()
                  .anyMatch(r -> r.line().get().find(family.line).isPresent());
      if (hidden && rules.size() < 2 * MOST_RULES) {
        LinePattern whole = LinePattern.of(LinePattern.quoted(family.words).replace("\t", "\\t"));
        rules.put(
            new EventRule(Kind.NOTE, Optional.of(whole), List.of()), family.words.length() + 1);
      }
    }
    return rules.entrySet().stream()
        .sorted(Comparator.comparingInt(rule -> -rule.getValue()))
        .map(Map.Entry::getKey)
        .toList();
  }
}
