package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What sentences around the rows define: columns, units, the sense of signs, codes, and the number
 * that stands for no star.
 */
final class LogSentences {
  private static final int MOST_LINES = 400;
  private static final Pattern CODE =
      Pattern.compile(
          "(?<![\\p{L}\\p{N}.,+\\u2212-])[\"'(]?([+\\u2212-]?[0-9]{1,4}|[\\p{L}*?!]{1,12}|[+\\u2212-])[\"')]?"
              + "\\s*(?:=|:|->|\\u2192|\\bmeans\\b|\\bbedeutet\\b|\\bsignifie\\b|\\bsignifica\\b|\\bbetekent\\b)\\s*"
              + "[\"']?(\\p{L}[^,;|=()]*)");
  private static final Pattern NUMBER = Pattern.compile("[+\\u2212-]?[0-9]+(?:[.,][0-9]+)?");
  private static final Pattern CLAUSE = Pattern.compile("[;:()|]|[.](?=\\s|$)|,(?=\\s)");

  private final Map<String, Direction> directions = new HashMap<>();
  private final Map<String, EventRule.Kind> events = new LinkedHashMap<>();
  private final Set<String> missing = new LinkedHashSet<>();
  private final boolean eastIsO;
  private final Map<Boolean, Map<Boolean, Direction>> positive = new HashMap<>();
  private final Map<Boolean, String> units = new HashMap<>();

  /**
   * Reads the lines that are no rows, and tells the columns what is said of them.
   *
   * @param eastIsO whether the letter O is east, as in German, and not west, as in French
   */
  LogSentences(List<String> others, List<Column> columns, boolean eastIsO) {
    this.eastIsO = eastIsO;
    for (String line : others.subList(0, Math.min(MOST_LINES, others.size()))) {
      if (line.length() <= LinePattern.LONGEST_LINE) {
        String text = TableHead.withoutMark(line);
        if (!defines(text, columns)) {
          statements(text);
        }
        codes(text);
        missing(text);
      }
    }
  }

  /** A line or a part of one that says what a column holds. */
  private boolean defines(String line, List<Column> columns) {
    boolean any = false;
    for (String part : parts(line)) {
      int sign = firstOf(part, ':', '=');
      int dash = Math.max(part.indexOf(" - "), part.indexOf(" \u2013 "));
      int at = sign > 0 && (dash < 0 || sign < dash) ? sign : dash;
      if (at > 0 && at + 1 < part.length()) {
        List<String> left = Words.tokens(part.substring(0, at));
        String right = part.substring(at + 1).strip();
        for (Column column : columns) {
          boolean same =
              !column.name.isEmpty() && Words.tokens(column.name).equals(left)
                  || !column.name.isEmpty() && column.named().tokens().equals(left);
          if (same && right.chars().anyMatch(Character::isLetter)) {
            column.describe(right);
            senseOf(right, column);
            any = true;
          }
        }
      }
    }
    return any;
  }

  private static List<String> parts(String line) {
    List<String> parts = new ArrayList<>(List.of(line));
    String[] pieces = line.split("[;|]|,(?=\\s)");
    if (pieces.length > 1) {
      parts.addAll(List.of(pieces));
    }
    return parts;
  }

  private static int firstOf(String text, char one, char other) {
    int a = text.indexOf(one);
    int b = text.indexOf(other);
    return a < 0 ? b : b < 0 ? a : Math.min(a, b);
  }

  private void senseOf(String text, Column column) {
    for (Direction to : senses(text).values()) {
      column.positiveTold(to, text.strip());
    }
  }

  /** Directions of positive values, by axis (true: declination), that a clause tells. */
  private Map<Boolean, Direction> senses(String clause) {
    Map<Boolean, Direction> found = new HashMap<>();
    String spaced =
        clause
            .replaceAll("\\+\\s*/\\s*[-\\u2212]", " ")
            .replaceAll("(?<![0-9])\\+(?![0-9])", " plus ")
            .replaceAll("(?<=\\s|^)[-\\u2212](?=\\s|$|\\p{L})", " minus ");
    List<String> tokens = Words.tokens(spaced);
    List<Integer> plus = new ArrayList<>();
    List<Integer> minus = new ArrayList<>();
    for (int i = 0; i < tokens.size(); i++) {
      Words word = Words.of(tokens.get(i));
      if (word.has("positive")) {
        plus.add(i);
      } else if (word.has("negative")) {
        minus.add(i);
      }
    }
    if (plus.isEmpty()) {
      return found;
    }
    Set<String> capitals = capitals(clause);
    for (int i = 0; i < tokens.size(); i++) {
      Optional<Direction> to = directionOf(tokens.get(i), capitals);
      if (to.isPresent()) {
        boolean dec = to.get() == Direction.NORTH || to.get() == Direction.SOUTH;
        boolean positive = near(plus, i) <= near(minus, i);
        found.putIfAbsent(dec, positive ? to.get() : to.get().opposite());
      }
    }
    return found;
  }

  private Optional<Direction> directionOf(String token, Set<String> capitals) {
    if (token.length() == 1) {
      return capitals.contains(token) ? Words.letter(token, eastIsO) : Optional.empty();
    }
    return Words.of(token).direction(eastIsO);
  }

  private static Set<String> capitals(String text) {
    Set<String> letters = new LinkedHashSet<>();
    Matcher letter = Pattern.compile("(?<!\\p{L})[EWNSOLZ](?!\\p{L})").matcher(text);
    while (letter.find()) {
      letters.add(letter.group().toLowerCase(Locale.ROOT));
    }
    return letters;
  }

  private static int near(List<Integer> places, int at) {
    return places.stream().mapToInt(p -> Math.abs(p - at)).min().orElse(Integer.MAX_VALUE);
  }

  private void statements(String line) {
    Optional<Boolean> scope = Optional.empty();
    for (String clause : CLAUSE.split(line)) {
      Words words = Words.of(clause);
      boolean pulse = words.has("pulse");
      boolean offset = words.has("offset") && !pulse || words.has("place");
      if (pulse || offset) {
        scope = Optional.of(pulse);
      }
      Optional<Boolean> about = scope;
      senses(clause)
          .forEach(
              (dec, to) ->
                  positive
                      .computeIfAbsent(about.orElse(false), any -> new HashMap<>())
                      .putIfAbsent(dec, to));
      if (clause.chars().noneMatch(Character::isDigit)
          && !words.hasAny("scale", "exposure", "guide rate", "focal length", "pixel size")) {
        boolean told = pulse || offset || words.hasAny("units");
        unitOf(words, told ? scope : Optional.empty(), told);
      }
    }
  }

  private void unitOf(Words words, Optional<Boolean> scope, boolean told) {
    if (!told) {
      return;
    }
    for (String unit : List.of("arcsec", "px", "ms", "s")) {
      boolean distance = unit.equals("arcsec") || unit.equals("px");
      boolean pulse = scope.orElse(!distance);
      if (words.has("unit " + unit) && !words.hasAny("time", "elapsed")) {
        if (distance || pulse) {
          units.putIfAbsent(pulse, unit);
        }
      }
    }
  }

  private void codes(String line) {
    Matcher code = CODE.matcher(line);
    int from = 0;
    while (code.find(from)) {
      String key = code.group(1);
      Words meaning = Words.of(code.group(2));
      Optional<Direction> to = meaning.direction(eastIsO);
      if (to.isPresent() && code.group(2).strip().length() > 1) {
        directions.putIfAbsent(key, to.get());
      }
      EventLines.kind(meaning).ifPresent(kind -> events.putIfAbsent(key, kind));
      from = code.start(2);
    }
  }

  private void missing(String line) {
    Words words = Words.of(line);
    if (words.hasAny("missing", "lost")) {
      Matcher number = NUMBER.matcher(line);
      while (number.find()) {
        missing.add(number.group());
      }
    }
  }

  /** What a code stands for. */
  Optional<Direction> direction(String code) {
    return Optional.ofNullable(directions.get(code));
  }

  /** What a code in a column of events stands for. */
  Optional<EventRule.Kind> event(String code) {
    return Optional.ofNullable(events.get(code));
  }

  /** Whether a number is said to stand for no star. */
  boolean saysMissing(String number) {
    return missing.contains(number);
  }

  boolean explainsMissing() {
    return !missing.isEmpty();
  }

  /** Where positive offsets, or pulses, of an axis are said to point. */
  Optional<Direction> positive(boolean pulse, boolean dec) {
    return Optional.ofNullable(positive.getOrDefault(pulse, Map.of()).get(dec));
  }

  /** The unit that offsets, or pulses, are said to be in. */
  Optional<String> unit(boolean pulse) {
    return Optional.ofNullable(units.get(pulse));
  }

  boolean eastIsO() {
    return eastIsO;
  }
}
