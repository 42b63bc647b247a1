package io.github.roundstar.ingest.layout;

import io.github.roundstar.ingest.layout.EventRule.Kind;
import io.github.roundstar.signal.Quantile;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What happened, told by words in a column or by lines between the rows. */
final class EventLines {
  private static final int MOST_RULES = 12;
  private static final int MOST_WORDS = 20;
  private static final int SHORTEST = 3;

  /** Rows under an unknown word that scatter so much more than others are no ordinary frames. */
  private static final double UNLIKE = 2;

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
    return KINDS.entrySet().stream()
        .filter(entry -> words.has(entry.getKey()))
        .map(Map.Entry::getValue)
        .findFirst();
  }

  /** What a word or line says. */
  static Optional<Kind> of(String text) {
    return kind(Words.of(text));
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

  /** Numbers that a sentence explains. */
  private static boolean isCoded(Column column, LogSentences text) {
    Set<String> values = new TreeSet<>(column.cells);
    values.remove("");
    return column.isNumeric()
        && column.isWhole()
        && values.size() <= MOST_WORDS
        && values.size() > 1
        && column.has("event")
        && values.stream().anyMatch(value -> text.event(value).isPresent());
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

  /** Rules for lines between the rows, each by the words that the line begins with. */
  static List<EventRule> lineRules(List<String> between, List<Decision> decisions) {
    Map<Kind, Set<String>> found = new LinkedHashMap<>();
    Map<Kind, String> first = new LinkedHashMap<>();
    Set<String> families = new LinkedHashSet<>();
    for (String line : between) {
      if (line.length() > 500 || !families.add(line.replaceAll("[0-9]+", "0"))) {
        continue;
      }
      Optional<Kind> kind = of(line);
      String words = words(line);
      if (kind.isPresent() && words.length() >= SHORTEST) {
        found.computeIfAbsent(kind.get(), any -> new LinkedHashSet<>()).add(words);
        first.putIfAbsent(kind.get(), line);
      }
    }
    List<EventRule> rules = new ArrayList<>();
    if (first.containsKey(Kind.DITHER)) {
      for (String words : found.get(Kind.DITHER)) {
        DitherSize.rule(first.get(Kind.DITHER), LinePattern.quoted(words), decisions)
            .ifPresent(rules::add);
      }
    }
    for (Kind kind : new LinkedHashSet<>(KINDS.values())) {
      List<String> all = found.getOrDefault(kind, Set.of()).stream().limit(MOST_RULES).toList();
      for (String words : all) {
        String expression = "(?<!\\p{L})" + LinePattern.quoted(words).replace("\t", "\\t");
        rules.add(new EventRule(kind, Optional.of(LinePattern.of(expression)), List.of()));
      }
      if (!all.isEmpty()) {
        decisions.add(
            Decision.certain(
                "lines that tell " + kind.word(),
                all.size() == 1 ? all.get(0) : all.size() + " kinds",
                "such as " + first.get(kind).strip()));
      }
    }
    return rules;
  }

  private static final Pattern SPEECH = Pattern.compile("\\p{L}[^0-9#*=:;|\\[\\]{}<>\"]*");

  /** The longest stretch of words without numbers that says what happened. */
  static String words(String line) {
    String best = "";
    Matcher speech = SPEECH.matcher(line);
    while (speech.find()) {
      String text = speech.group().replaceAll("[\\s,.+(\u2212-]+$", "");
      if (of(text).isPresent() && text.length() > best.length()) {
        best = text;
      }
    }
    return best;
  }
}
