package io.github.roundstar.ingest.layout;

import io.github.roundstar.ingest.layout.EventRule.Kind;
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
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** What happened, told by words in a column or by lines between the rows. */
final class EventLines {
  private static final int MOST_RULES = 20;
  private static final int MOST_WORDS = 20;
  private static final int SHORTEST = 3;

  /** Rows under an unknown word that scatter so much more than others are no ordinary frames. */
  private static final double UNLIKE = 2;

  private static final double NEARLY_ALL = 0.9;
  private static final int MOST_STARTS = 300;

  /** In the order in which they are tried: the end of settling names settling too. */
  private static final Map<String, Kind> KINDS = new LinkedHashMap<>();

  static {
    KINDS.put("settled", Kind.GUIDING);
    KINDS.put("flip", Kind.FLIP);
    KINDS.put("lost", Kind.LOST);
    KINDS.put("dither", Kind.DITHER);
    KINDS.put("settling", Kind.SETTLING);
    KINDS.put("idle", Kind.IDLE);
    KINDS.put("guiding", Kind.GUIDING);
  }

  private EventLines() {}

  /** What words say. */
  static Optional<Kind> kind(Words words) {
    if (words.has("found") && !words.has("settled")) {
      return Optional.empty(); // the rows tell that the star is back; it may still be settling
    }
    if (words.has("settled") && words.has("idle")) {
      return Optional.of(Kind.SETTLING); // waiting until it is calm
    }
    Kind best = null;
    int longest = 0;
    for (Map.Entry<String, Kind> entry : KINDS.entrySet()) {
      if (words.longest(entry.getKey()) > longest) {
        longest = words.longest(entry.getKey());
        best = entry.getValue();
      }
    }
    return Optional.ofNullable(best);
  }

  /** What a word or line says. */
  static Optional<Kind> of(String text) {
    return kind(Words.of(text));
  }

  private static Set<String> values(Column column) {
    Set<String> values = new TreeSet<>();
    for (String cell : column.cells) {
      if (values.size() <= 4) {
        values.add(cell);
      }
    }
    return values;
  }

  /** Whether a column says yes and no. */
  static boolean isBinary(Column column) {
    Set<String> values = values(column);
    return values.size() <= 3
        && values.stream().anyMatch(Numbers::isNo)
        && values.stream().filter(value -> !Numbers.isNo(value)).count() <= 1
        && values.stream().allMatch(value -> value.length() <= 6);
  }

  /** What a column of yes and no says by its name. */
  static Optional<Meaning> flag(Column column, Column[] offsets) {
    Set<String> values = values(column);
    if (!isBinary(column) || column.named().isEmpty()) {
      return Optional.empty();
    }
    Optional<Kind> kind =
        KINDS.entrySet().stream()
            .filter(entry -> column.nameHas(entry.getKey()))
            .map(Map.Entry::getValue)
            .min(Comparator.comparing(Kind.GUIDING::equals)); // a flag tells what is unusual
    if (kind.isEmpty() || kind.get() == Kind.IDLE || kind.get() == Kind.GUIDING) {
      String set = values.stream().filter(value -> !Numbers.isNo(value)).findFirst().orElse("");
      Column farther = offsets[0].scatter() > offsets[1].scatter() ? offsets[0] : offsets[1];
      boolean side = column.hasAny("other", "snr", "flux", "pulse", "offset", "sense");
      kind =
          set.isEmpty() || side
              ? kind
              : shown(column, set, farther).or(() -> Optional.of(Kind.NOTE));
    }
    return switch (kind.orElse(Kind.NOTE)) {
      case LOST -> Optional.of(Meaning.LOST_FLAG);
      case DITHER -> Optional.of(Meaning.DITHER_FLAG);
      case SETTLING -> Optional.of(Meaning.SETTLING_FLAG);
      default -> Optional.empty();
    };
  }

  /** Whether the words of a column tell events, or are explained as such. */
  static boolean tellsEvents(Column column, LogSentences text) {
    boolean few = !column.words.isEmpty() && column.words.size() <= MOST_WORDS;
    boolean known =
        column.words.stream()
            .anyMatch(
                word ->
                    text.event(word).isPresent()
                        || of(word).filter(kind -> kind != Kind.GUIDING).isPresent());
    boolean calm = column.words.stream().allMatch(w -> Numbers.isNoValue(w) || of(w).isPresent());
    boolean named = column.has("event");
    boolean wordy =
        column.numeric == 0
            && few
            && (named || known || calm || column.isNameless() && column.words.size() > 1);
    return wordy && column.onlyWord().isEmpty() || isCoded(column, text);
  }

  /** Whether a sentence explains all values of a column that nothing else is said of. */
  private static boolean areTold(Column column, Set<String> values, LogSentences text) {
    return !column.hasAny("run", "frame", "sense", "pulse", "offset", "snr", "flux")
        && values.stream().allMatch(value -> text.event(value).isPresent());
  }

  /** Numbers that a sentence explains. */
  private static boolean isCoded(Column column, LogSentences text) {
    Set<String> values = new TreeSet<>(column.cells);
    values.remove("");
    return column.isNumeric()
        && column.isWhole()
        && values.size() <= MOST_WORDS
        && values.size() > 1
        && (column.has("event") || column.hasCodesTold() || areTold(column, values, text))
        && column.rising() < 0.3
        && column.largest() < 100;
  }

  /**
   * Rules for the words of an event column. Words that nothing explains are asked about where their
   * rows are unlike the others; else they are remarks.
   */
  static List<EventRule> rules(
      Column column, LogSentences text, Column offset, List<Decision> decisions) {
    Map<Kind, List<String>> byKind = new TreeMap<>();
    List<String> unknown = new ArrayList<>();
    Map<String, Integer> counts = new TreeMap<>();
    column.cells.forEach(word -> counts.merge(word, 1, Integer::sum));
    column.elsewhere().forEach(word -> counts.putIfAbsent(word, 0));
    counts.remove("");
    String usual =
        counts.entrySet().stream()
            .max(Map.Entry.comparingByValue())
            .map(Map.Entry::getKey)
            .orElse("");
    for (String word : counts.keySet()) {
      Optional<Kind> kind = text.event(word).or(() -> of(word));
      boolean ordinary =
          Numbers.isNoValue(word)
              || word.equals(".")
              || word.equals(usual) && counts.get(word) * 2 > column.cells.size();
      if (kind.isPresent()) {
        byKind.computeIfAbsent(kind.get(), any -> new ArrayList<>()).add(word);
      } else if (ordinary) {
        byKind.computeIfAbsent(Kind.GUIDING, any -> new ArrayList<>()).add(word);
      } else {
        unknown.add(word);
      }
    }
    List<String> remarks =
        unknown.stream().filter(word -> !isUnlike(column, word, offset)).toList();
    if (!remarks.isEmpty()) {
      byKind.computeIfAbsent(Kind.NOTE, any -> new ArrayList<>()).addAll(remarks);
      unknown.removeAll(remarks);
    }
    List<EventRule> rules = new ArrayList<>();
    byKind.forEach((kind, known) -> rules.add(new EventRule(kind, Optional.empty(), known)));
    if (!unknown.isEmpty()) {
      List<String> shown = unknown.subList(0, Math.min(12, unknown.size()));
      decisions.add(
          Decision.open(
              column.called(),
              "its words "
                  + shown
                  + " say nothing known, and the star is farther off in their rows",
              "[[event]]\nmeans = \"guiding\"   # or dither, settling, lost, idle, note\nwords = \""
                  + String.join("|", shown).replace("\\", "\\\\").replace("\"", "\\\"")
                  + "\""));
    } else if (!rules.isEmpty()) {
      decisions.add(
          Decision.certain(
              column.called(),
              "tells what happens",
              "words "
                  + counts.keySet().stream().limit(12).toList()
                  + (remarks.isEmpty()
                      ? ""
                      : ", of which " + remarks.stream().limit(12).toList() + " are remarks")));
    }
    return rules;
  }

  /** Rows in which a word or flag says that the star was lost. */
  static IntPredicate lost(Map<Meaning, Column> found, List<EventRule> rules) {
    Set<String> words = new TreeSet<>();
    rules.stream().filter(r -> r.means() == Kind.LOST).forEach(r -> words.addAll(r.words()));
    Column events = found.get(Meaning.EVENT);
    Column flags = found.get(Meaning.LOST_FLAG);
    return i ->
        events != null && words.contains(events.cells.get(i))
            || flags != null && !Numbers.isNo(flags.cells.get(i));
  }

  /** What the rows under a word show: no star, a jump, or a star that comes back from one. */
  private static Optional<Kind> shown(Column column, String word, Column offset) {
    int rows = 0;
    int missing = 0;
    int stretches = 0;
    List<Double> own = new ArrayList<>();
    List<Double> others = new ArrayList<>();
    for (int i = 0; i < offset.numbers.length; i++) {
      double value = Math.abs(offset.numbers[i]);
      boolean under = column.cells.get(i).equals(word);
      rows += under ? 1 : 0;
      missing += under && Double.isNaN(value) ? 1 : 0;
      stretches += under && (i == 0 || !column.cells.get(i - 1).equals(word)) ? 1 : 0;
      if (!Double.isNaN(value)) {
        (under ? own : others).add(value);
      }
    }
    if (missing >= 0.8 * rows) {
      return Optional.of(Kind.LOST);
    }
    if (own.size() < 2 || others.isEmpty() || rows > 0.4 * offset.numbers.length) {
      return Optional.empty();
    }
    double ratio = median(own) / median(others);
    boolean single = stretches > 0.8 * rows;
    if (ratio > JUMP && single) {
      return Optional.of(Kind.DITHER);
    }
    return ratio > 1.4 && rows >= 6 ? Optional.of(Kind.SETTLING) : Optional.empty();
  }

  private static boolean isUnlike(Column column, String word, Column offset) {
    List<Double> own = new ArrayList<>();
    List<Double> others = new ArrayList<>();
    for (int i = 0; i < offset.numbers.length; i++) {
      double value = Math.abs(offset.numbers[i]);
      if (Double.isFinite(value)) {
        (column.cells.get(i).equals(word) ? own : others).add(value);
      }
    }
    return own.size() >= 2 && !others.isEmpty() && median(own) > UNLIKE * median(others);
  }

  private static double median(List<Double> values) {
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
      this.words = words(line);
      this.kind = of(words.isEmpty() ? line : words);
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
    byRows(families, offsets);
    settlingByPlace(families);
    boolean ends = families.stream().anyMatch(f -> f.kind.filter(Kind.GUIDING::equals).isPresent());
    Map<EventRule, Integer> rules = new LinkedHashMap<>();
    for (Kind kind : new LinkedHashSet<>(KINDS.values())) {
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
      int far = 0;
      for (int row : family.known) {
        far +=
            row < size.length && size[row] > JUMP * usual && size[row] > 2 * size[row - 1] ? 1 : 0;
      }
      if (family.kind.isEmpty() && far >= 2 && far >= 0.7 * family.known.size()) {
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
  private static final double JUMP = 3;

  /** The word of a line that means something, as it is written; empty if none does. */
  static String label(String line, String concept) {
    Matcher word = Pattern.compile("\\p{L}+(?: \\p{L}+)?").matcher(line);
    for (int from = 0; word.find(from); from = word.start() + 1) {
      for (String text : List.of(word.group().split(" ")[0], word.group())) {
        if (Words.of(text).has(concept)) {
          return text;
        }
      }
    }
    return "";
  }

  private static final Pattern SPEECH = Pattern.compile("\\p{L}[^0-9#*=:;|\\[\\]{}<>\"]*");

  /** The longest stretch of words without numbers that says what happened. */
  static String words(String line) {
    String best = "";
    Matcher speech =
        SPEECH.matcher(
            line.replaceFirst("^[^\\p{L}]*[0-9][0-9T:.,Z+\u2212-]*(?: ?[AaPp]\\.?[Mm]\\.?)?", ""));
    while (speech.find()) {
      String text = speech.group().replaceAll("[\\s,.+(\u2212-]+$", "");
      boolean better =
          of(text).isPresent() == of(best).isPresent()
              ? text.length() > best.length()
              : of(text).isPresent();
      best = better ? text : best;
    }
    return best;
  }
}
