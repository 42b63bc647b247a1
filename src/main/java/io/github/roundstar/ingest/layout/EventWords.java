package io.github.roundstar.ingest.layout;

import io.github.roundstar.ingest.layout.EventRule.Kind;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** What happened, told by ordinary words. */
final class EventWords {
  /** In the order in which they are tried: the end of settling names settling too. */
  private static final Map<Kind, Pattern> WORDS = new LinkedHashMap<>();

  static {
    put(
        Kind.GUIDING,
        "settled|settling (?:done|ended|over|complete)|calm$|steady|^ok$|^good$|guiding|^-$|^[.]$|resumed|tracking");
    put(Kind.FLIP, "flip|other side of the pier");
    put(Kind.LOST, "lost|missed|no star|not found|too faint");
    put(Kind.DITHER, "dither|set point moved|new place|^moved$");
    put(Kind.SETTLING, "settling|calming|^moving$");
    put(Kind.IDLE, "idle|paused|waiting|stopped");
  }

  private EventWords() {}

  private static void put(Kind kind, String words) {
    WORDS.put(kind, Pattern.compile(words));
  }

  /** What a word or line says. */
  static Optional<Kind> of(String text) {
    String lower = text.toLowerCase(Locale.ROOT).strip();
    return WORDS.entrySet().stream()
        .filter(entry -> entry.getValue().matcher(lower).find())
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** Rules for the words of an event column; words that say nothing known are asked about. */
  static List<EventRule> rules(ColumnData column, List<Decision> decisions) {
    Map<Kind, List<String>> byKind = new TreeMap<>();
    List<String> unknown = new ArrayList<>();
    Set<String> words = new TreeSet<>(column.cells);
    words.remove("");
    for (String word : words) {
      Optional<Kind> kind = of(word);
      if (kind.isPresent()) {
        byKind.computeIfAbsent(kind.get(), any -> new ArrayList<>()).add(word);
      } else {
        unknown.add(word);
      }
    }
    List<EventRule> rules = new ArrayList<>();
    byKind.forEach((kind, known) -> rules.add(new EventRule(kind, Optional.empty(), known)));
    if (!unknown.isEmpty()) {
      List<String> shown = unknown.subList(0, Math.min(12, unknown.size()));
      decisions.add(
          Decision.open(
              column.called(),
              "its words " + shown + " say nothing known of a row",
              "[[event]]\nmeans = \"guiding\"   # or dither, settling, lost, idle, note\nwords = \""
                  + String.join("|", shown).replace("\\", "\\\\").replace("\"", "\\\"")
                  + "\""));
    } else if (!rules.isEmpty()) {
      decisions.add(Decision.certain(column.called(), "tells what happens", "words " + words));
    }
    return rules;
  }

  /** Rules for lines between the rows. */
  static List<EventRule> lineRules(List<String> between, List<Decision> decisions) {
    Map<Kind, String> first = new LinkedHashMap<>();
    for (String line : between) {
      of(line).ifPresent(kind -> first.putIfAbsent(kind, line));
    }
    List<EventRule> rules = new ArrayList<>();
    if (first.containsKey(Kind.DITHER)) {
      DitherSize.rule(first.get(Kind.DITHER), WORDS.get(Kind.DITHER).pattern(), decisions)
          .ifPresent(rules::add);
    }
    for (Kind kind : WORDS.keySet()) {
      if (first.containsKey(kind)) {
        rules.add(
            new EventRule(
                kind, Optional.of(LinePattern.of("(?i)" + WORDS.get(kind).pattern())), List.of()));
      }
    }
    return rules;
  }
}
