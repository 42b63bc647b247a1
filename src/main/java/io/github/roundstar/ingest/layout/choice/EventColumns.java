package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.EventRule.Kind;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.evidence.LogSentences;
import io.github.roundstar.ingest.layout.text.EventWords;
import io.github.roundstar.ingest.layout.text.Numbers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;

/** Columns that tell what happened, by words, codes or flags. */
final class EventColumns {
  private static final int MOST_WORDS = 20;

  /** Rows under an unknown word that scatter so much more than others are no ordinary frames. */
  private static final double UNLIKE = 1.4;

  private EventColumns() {}

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
  static Optional<Meaning> flag(Column column, ShownRows rows) {
    Set<String> values = values(column);
    if (!isBinary(column) || column.named().isEmpty()) {
      return Optional.empty();
    }
    Optional<Kind> kind =
        EventWords.KINDS.entrySet().stream()
            .filter(entry -> column.nameHas(entry.getKey()))
            .map(Map.Entry::getValue)
            .min(Comparator.comparing(Kind.GUIDING::equals)); // a flag tells what is unusual
    if (kind.isEmpty() || kind.get() == Kind.IDLE || kind.get() == Kind.GUIDING) {
      String set = values.stream().filter(value -> !Numbers.isNo(value)).findFirst().orElse("");
      boolean side = column.hasAny("other", "snr", "flux", "pulse", "offset", "sense");
      kind =
          set.isEmpty() || side ? kind : shown(column, set, rows).or(() -> Optional.of(Kind.NOTE));
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
                        || EventWords.of(word).filter(kind -> kind != Kind.GUIDING).isPresent());
    boolean calm =
        column.words.stream().allMatch(w -> Numbers.isNoValue(w) || EventWords.of(w).isPresent());
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
        && (values.size() > 1 || column.hasCodesTold())
        && (column.has("event") && !column.has("run")
            || column.hasCodesTold()
            || areTold(column, values, text))
        && column.rising() < 0.3
        && column.largest() < 100;
  }

  /**
   * Rules for the words of an event column. Words that nothing explains are asked about where their
   * rows are unlike the others; else they are remarks.
   */
  static List<EventRule> rules(
      Column column, LogSentences text, ShownRows rows, List<Decision> decisions) {
    Map<Kind, List<String>> byKind = new TreeMap<>();
    List<String> unknown = new ArrayList<>();
    Map<String, Integer> counts = new TreeMap<>();
    column.cells.forEach(word -> counts.merge(word, 1, Integer::sum));
    column.elsewhere().forEach(word -> counts.putIfAbsent(word, 0));
    if (column.hasCodesTold()) {
      text.eventCodes().forEach(code -> counts.putIfAbsent(code, 0)); // they may come later
    }
    counts.remove("");
    String usual =
        counts.entrySet().stream()
            .max(Map.Entry.comparingByValue())
            .map(Map.Entry::getKey)
            .orElse("");
    for (String word : counts.keySet()) {
      Optional<Kind> kind = text.event(word).or(() -> EventWords.of(word));
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
    byRows(column, rows, unknown, byKind);
    List<String> remarks = unknown.stream().filter(word -> !isUnlike(column, word, rows)).toList();
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

  /**
   * Unknown words whose rows show what they say. What always begins right behind a dither is no
   * calm, whatever its words: {@code not yet stable}.
   */
  private static void byRows(
      Column column, ShownRows rows, List<String> unknown, Map<Kind, List<String>> byKind) {
    for (String word : List.copyOf(unknown)) {
      Optional<Kind> kind =
          shown(column, word, rows).filter(k -> k == Kind.LOST || k == Kind.DITHER);
      if (kind.isPresent()) {
        byKind.computeIfAbsent(kind.get(), any -> new ArrayList<>()).add(word);
        unknown.remove(word);
      }
    }
    List<String> dithers = byKind.getOrDefault(Kind.DITHER, List.of());
    List<String> calm = byKind.getOrDefault(Kind.GUIDING, new ArrayList<>());
    List<String> free = new ArrayList<>(unknown);
    free.addAll(calm);
    free.removeIf(word -> word.isEmpty() || !isBehind(column, word, dithers));
    if (!byKind.containsKey(Kind.SETTLING) && !free.isEmpty()) {
      String word =
          free.stream().max(Comparator.comparingDouble(w -> ratio(column, w, rows))).get();
      byKind.computeIfAbsent(Kind.SETTLING, any -> new ArrayList<>()).add(word);
      unknown.remove(word);
      calm.remove(word);
    }
  }

  private static double ratio(Column column, String word, ShownRows rows) {
    return rows.ratio(i -> column.cells.get(i).equals(word));
  }

  /** Whether a word mostly begins right behind one of some others; a lost star may part it. */
  private static boolean isBehind(Column column, String word, List<String> others) {
    int begins = 0;
    int behind = 0;
    for (int i = 1; i < column.cells.size(); i++) {
      if (column.cells.get(i).equals(word) && !column.cells.get(i - 1).equals(word)) {
        begins++;
        behind += others.contains(column.cells.get(i - 1)) ? 1 : 0;
      }
    }
    return behind > 0 && behind >= 0.5 * begins;
  }

  /** What the rows under a word show: no star, a jump, or a star that comes back from one. */
  private static Optional<Kind> shown(Column column, String word, ShownRows rows) {
    int count = 0;
    int missing = 0;
    int stretches = 0;
    for (int i = 0; i < rows.count(); i++) {
      boolean under = column.cells.get(i).equals(word);
      count += under ? 1 : 0;
      missing += under && rows.isMissing(i) ? 1 : 0;
      stretches += under && (i == 0 || !column.cells.get(i - 1).equals(word)) ? 1 : 0;
    }
    if (missing >= 0.8 * count) {
      return Optional.of(Kind.LOST);
    }
    if (count > 0.4 * rows.count()) {
      return Optional.empty();
    }
    double ratio = ratio(column, word, rows);
    if (ShownRows.isFar(ratio, count < 2) && stretches > 0.8 * count) {
      return Optional.of(Kind.DITHER);
    }
    return ratio > 1.4 && count >= 6 ? Optional.of(Kind.SETTLING) : Optional.empty();
  }

  private static boolean isUnlike(Column column, String word, ShownRows rows) {
    long own = column.cells.stream().filter(word::equals).count();
    return own >= 2 && ratio(column, word, rows) > UNLIKE;
  }

  /** Whether some word of a column of few words stands only where the rows are unlike others. */
  static boolean isShown(Column column, ShownRows rows) {
    return column.numeric == 0
        && column.words.size() <= 6
        && column.words.stream()
            .anyMatch(
                word ->
                    shown(column, word, rows)
                        .filter(k -> k == Kind.LOST || k == Kind.DITHER)
                        .isPresent());
  }
}
