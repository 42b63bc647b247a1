package io.github.roundstar.ingest.layout.evidence;

import io.github.roundstar.ingest.layout.CameraAxes;
import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.text.EventWords;
import io.github.roundstar.ingest.layout.text.Numbers;
import io.github.roundstar.ingest.layout.text.TableHead;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * What sentences around the rows define: columns, units, the sense of signs, codes, and the number
 * that stands for no star.
 */
public final class LogSentences {
  private static final int MOST_LINES = 400;
  private static final int MOST_SENSE_WORDS = 9;
  private static final Pattern CODE =
      Pattern.compile(
          "(?<![\\p{L}\\p{N}.,+\\u2212-])[\"'(]?([+\\u2212-]?[0-9]{1,4}|[\\p{L}*?!]{1,12}|[+\\u2212-])[\"')]?"
              + "\\s*(?:=|:|->|\\u2192|\\bmeans\\b|\\bbedeutet\\b|\\bsignifie\\b|\\bsignifica\\b|\\bbetekent\\b)\\s*"
              + "[\"']?(\\p{L}[^,;|=()]*)");
  private static final Pattern NUMBER = Pattern.compile("[+\\u2212-]?[0-9]+(?:[.,][0-9]+)?");
  private static final Pattern CLAUSE =
      Pattern.compile("[;:()|]|[.](?=\\s+\\p{Lu}|\\s*$)|,(?=\\s)");

  private final Map<String, Direction> directions = new HashMap<>();
  private final Map<String, EventRule.Kind> events = new LinkedHashMap<>();
  private final Set<String> missing = new LinkedHashSet<>();
  private final Map<Character, Double> marks = new HashMap<>();
  private Optional<Boolean> raFirst = Optional.empty();
  private Optional<CameraAxes> camera = Optional.empty();
  private Optional<Map<Boolean, Double>> turned = Optional.empty();
  private final boolean eastIsO;
  private final Map<Boolean, Map<Boolean, Direction>> positive = new HashMap<>();
  private final Map<Boolean, Set<String>> units = new HashMap<>();
  private final Map<Boolean, Set<Boolean>> contradicted = new HashMap<>();
  private final Map<Boolean, Boolean> passedOver = new HashMap<>(Map.of(false, false, true, false));

  /**
   * Reads the lines that are no rows, and tells the columns what is said of them.
   *
   * @param eastIsO whether the letter O is east, as in German, and not west, as in French
   */
  public LogSentences(List<String> others, List<Column> columns, boolean eastIsO) {
    this.eastIsO = eastIsO;
    for (String line : others.subList(0, Math.min(MOST_LINES, others.size()))) {
      if (line.length() <= LinePattern.LONGEST_LINE) {
        String text = TableHead.withoutLead(line);
        int before = understood();
        if (!defines(text, columns)) {
          statements(text);
        }
        sense(text);
        codes(text);
        missing(text);
        marks(text);
        axes(text);
        turned(text);
        order(text);
        if (understood() == before) {
          passedOver(text);
        }
      }
    }
  }

  private int understood() {
    return directions.size()
        + positive.values().stream().mapToInt(Map::size).sum()
        + (isCameraTurned() ? 1 : 0);
  }

  /** A sentence with a direction in it of which nothing was understood. */
  private void passedOver(String line) {
    Words words = Words.of(line);
    boolean bare =
        MARKER
            .matcher(line)
            .replaceFirst("")
            .chars()
            .noneMatch(c -> "0123456789:=".indexOf(c) >= 0);
    boolean ofSigns = words.hasAny("offset", "pulse", "ra", "dec", "star", "x", "y");
    if (words.has("positive") || bare && ofSigns && !words.hasAny("pier side", "dither")) {
      boolean unknown =
          words.has("positive") && !words.hasAny("east", "west", "north", "south", "unit mas");
      passedOver.merge(false, unknown || words.hasAny("east", "west"), Boolean::logicalOr);
      passedOver.merge(true, unknown || words.hasAny("north", "south"), Boolean::logicalOr);
    }
  }

  /** Whether a sentence may tell the sense of an axis that was not understood. */
  public boolean passesOverSense(boolean dec) {
    return passedOver.get(dec);
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
            if (CODE.matcher(right).lookingAt()) {
              column.codesTold();
            }
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
      if (isSaidAt(i, tokens, "positive")) {
        plus.add(i);
      } else if (isSaidAt(i, tokens, "negative")) {
        minus.add(i);
      }
    }
    if (plus.isEmpty()) {
      return found;
    }
    Set<String> capitals = capitals(clause);
    List<Integer> wordsFirst = // a letter may be an article, as in Portuguese
        IntStream.range(0, tokens.size())
            .boxed()
            .sorted(Comparator.comparing(i -> tokens.get(i).length() == 1))
            .toList();
    for (int i : wordsFirst) {
      Optional<Direction> to = directionOf(tokens.get(i), capitals);
      if (to.isPresent() && !isVerb(tokens, i)) {
        boolean dec = to.get() == Direction.NORTH || to.get() == Direction.SOUTH;
        boolean positive = near(plus, i) <= near(minus, i);
        found.putIfAbsent(dec, positive ? to.get() : to.get().opposite());
      }
    }
    return found;
  }

  /** Whether a word, or a phrase such as {@code above zero} that begins there, has a meaning. */
  private static boolean isSaidAt(int at, List<String> tokens, String concept) {
    boolean said = Words.of(tokens.get(at)).has(concept);
    for (int end = at + 2; !said && end <= Math.min(tokens.size(), at + 4); end++) {
      said = Words.of(String.join(" ", tokens.subList(at, end))).isJust(concept);
    }
    return said;
  }

  /** French has one word for east and for is: {@code est a l'ouest}. */
  private static boolean isVerb(List<String> tokens, int at) {
    return tokens.get(at).equals("est")
        && at + 1 < tokens.size()
        && (at == 0 || !Set.of("l", "d", "vers").contains(tokens.get(at - 1)))
        && (Set.of("a", "au", "en", "trop", "dans").contains(tokens.get(at + 1))
            || tokens.get(at + 1).matches("compte.*|situe.*|place.*"));
  }

  private Optional<Direction> directionOf(String token, Set<String> capitals) {
    if (token.length() == 1) {
      return capitals.contains(token) ? Words.letter(token, eastIsO) : Optional.empty();
    }
    return Words.of(token).direction(eastIsO);
  }

  private static Set<String> capitals(String text) {
    Set<String> letters = new LinkedHashSet<>();
    Matcher letter = Pattern.compile("(?<!\\p{L})[EWNSOLZ](?!['\u2019\\p{L}])").matcher(text);
    while (letter.find()) {
      letters.add(letter.group().toLowerCase(Locale.ROOT));
    }
    return letters;
  }

  private static int near(List<Integer> places, int at) {
    return places.stream().mapToInt(p -> Math.abs(p - at)).min().orElse(Integer.MAX_VALUE);
  }

  /** What may stand before a sentence, such as {@code NOTE:}. */
  private static final Pattern MARKER = Pattern.compile("^\\W*\\p{L}+: ");

  private static final Pattern ABOVE = Pattern.compile(">=? ?0(?![.,]?[0-9])");
  private static final Pattern BELOW = Pattern.compile("<=? ?0(?![.,]?[0-9])");

  /**
   * The clauses of a line. One that speaks of positive values without a direction goes on in the
   * next: {@code a positive value means, the star stands west}; or it ends the one before: {@code
   * when the star drifts west, the value grows}.
   */
  private List<String> clauses(String line) {
    List<String> all = new ArrayList<>();
    boolean goesOn = false;
    for (String clause : CLAUSE.split(line)) {
      Words words = Words.of(clause);
      Words before = Words.of(all.isEmpty() ? "" : all.get(all.size() - 1));
      boolean ends =
          words.has("positive")
              && before.has("star")
              && !before.hasAny("positive", "negative", "pier side")
              && before.hasAny("east", "west", "north", "south")
              && senses(clause).isEmpty();
      if (ends || goesOn && !words.hasAny("positive", "negative")) {
        all.set(all.size() - 1, all.get(all.size() - 1) + " " + clause);
      } else {
        all.add(clause);
      }
      boolean unit = words.has("unit mas"); // which is Spanish for more as well
      goesOn = words.has("positive") && !unit && senses(clause).isEmpty();
    }
    return all;
  }

  /**
   * The way in which an axis counts: {@code RA counts to the east}, {@code Dec grows northward},
   * whatever the verb.
   */
  private void sense(String line) {
    Words words = Words.of(line);
    boolean other =
        words.hasAny("positive", "negative", "pulse", "pier side", "x", "y", "start", "scale")
            || line.chars().anyMatch(Character::isDigit);
    if (other || words.tokens().size() > MOST_SENSE_WORDS || words.has("ra") == words.has("dec")) {
      return;
    }
    Set<Direction> found = new HashSet<>();
    Set<String> capitals = capitals(line);
    for (int i = 0; i < words.tokens().size(); i++) {
      if (!isVerb(words.tokens(), i)) {
        directionOf(words.tokens().get(i), capitals).ifPresent(found::add);
      }
    }
    if (found.size() == 1) {
      Direction to = found.iterator().next();
      boolean dec = to == Direction.NORTH || to == Direction.SOUTH;
      if (dec == words.has("dec")) {
        tell(false, dec, to);
      }
    }
  }

  /** Takes what a sentence says of positive values; of two that contradict each other neither. */
  private void tell(boolean pulse, boolean dec, Direction to) {
    Direction before = positive.computeIfAbsent(pulse, any -> new HashMap<>()).putIfAbsent(dec, to);
    if (before != null && before != to) {
      contradicted.computeIfAbsent(pulse, any -> new HashSet<>()).add(dec);
      passedOver.put(dec, true);
    }
  }

  private void statements(String line) {
    Optional<Boolean> scope = Optional.empty();
    boolean ofUnits = false;
    for (String clause :
        clauses(
            BELOW.matcher(ABOVE.matcher(line).replaceAll(" positive ")).replaceAll(" negative "))) {
      Words words = Words.of(clause);
      boolean pulse = words.has("pulse");
      boolean offset = words.has("offset") && !pulse || words.has("place");
      if (pulse || offset) {
        scope = Optional.of(pulse);
      }
      Optional<Boolean> about = scope;
      boolean movesStar = pulse && words.has("star");
      senses(clause)
          .forEach((dec, to) -> tell(about.orElse(false), dec, movesStar ? to.opposite() : to));
      if (line.chars().noneMatch(Character::isDigit)
          && !words.hasAny("scale", "exposure", "guide rate", "focal length")) {
        boolean own = pulse || offset;
        ofUnits |= words.has("units");
        unitOf(words, own ? scope : Optional.empty(), own || ofUnits);
      }
    }
  }

  private void unitOf(Words words, Optional<Boolean> scope, boolean told) {
    if (!told) {
      return;
    }
    Set<Boolean> kinds = new HashSet<>();
    for (String unit : List.of("mas", "arcsec", "px", "us", "ms", "s")) {
      boolean distance = unit.equals("arcsec") || unit.equals("px") || unit.equals("mas");
      boolean pulse = scope.orElse(!distance);
      boolean time = words.hasAny("time", "elapsed") && !words.has("unit arcsec");
      if (words.has("unit " + unit) && !time) {
        if ((distance || pulse) && kinds.add(pulse)) {
          units.computeIfAbsent(pulse, any -> new HashSet<>()).add(unit);
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
      EventWords.kind(meaning).ifPresent(kind -> events.putIfAbsent(key, kind));
      from = code.start(2);
    }
  }

  private void order(String line) {
    List<String> tokens = Words.tokens(line);
    int first = -1;
    int second = -1;
    for (int i = 0; i < tokens.size(); i++) {
      Words word = Words.of(tokens.get(i));
      first = first < 0 && word.has("first") ? i : first;
      second = second < 0 && first >= 0 && word.has("second") ? i : second;
    }
    if (second > first && first >= 0) {
      Words one = Words.of(String.join(" ", tokens.subList(first, second)));
      Words two = Words.of(String.join(" ", tokens.subList(second, tokens.size())));
      boolean ra = one.hasAny("ra", "east", "west");
      boolean dec = one.hasAny("dec", "north", "south");
      boolean fits =
          two.hasAny("dec", "north", "south") == ra && two.hasAny("ra", "east", "west") == dec;
      if (ra != dec && fits) {
        raFirst = Optional.of(ra);
      }
    }
  }

  /** Whether right ascension stands before declination, where a sentence tells it. */
  public Optional<Boolean> raFirst() {
    return raFirst;
  }

  private static final Pattern MARK =
      Pattern.compile("(?i)(?<!\\p{L})([xy])\\s*(?:=|:|at)?\\s*([+\u2212-]?[0-9]+(?:[.,][0-9]+)?)");

  private void marks(String line) {
    if (Words.of(line).has("set point")) {
      Matcher mark = MARK.matcher(line);
      while (mark.find()) {
        String text = mark.group(2).replace(',', '.').replace('\u2212', '-');
        marks.putIfAbsent(
            mark.group(1).toLowerCase(Locale.ROOT).charAt(0), Double.parseDouble(text));
      }
    }
  }

  /** Where x and y point on the sky: {@code x runs along right ascension to the east, y ...}. */
  private void axes(String line) {
    List<String> tokens = Words.tokens(line);
    int x = tokens.indexOf("x");
    int y = tokens.lastIndexOf("y");
    if (x < 0 || y < x) {
      return;
    }
    Words one = Words.of(String.join(" ", tokens.subList(x + 1, y)));
    Words two = Words.of(String.join(" ", tokens.subList(y + 1, tokens.size())));
    Optional<Direction> ofX = one.direction(eastIsO);
    Optional<Direction> ofY = two.direction(eastIsO);
    if (ofX.isPresent() && ofY.isPresent()) {
      boolean xIsRa = ofX.get() == Direction.EAST || ofX.get() == Direction.WEST;
      boolean yIsRa = ofY.get() == Direction.EAST || ofY.get() == Direction.WEST;
      if (xIsRa != yIsRa) {
        double alongX = ofX.get().sign() > 0 ? 0 : 180;
        double alongY = ofY.get().sign() > 0 ? 90 : -90;
        camera =
            Optional.of(
                new CameraAxes(
                    OptionalDouble.of(xIsRa ? alongX : alongY),
                    OptionalDouble.of(xIsRa ? alongY : alongX),
                    Optional.empty()));
      }
    }
  }

  private static final Pattern TURNED =
      Pattern.compile("([+\\u2212-]?[0-9]{1,3}(?:[.,][0-9]+)?) ?(\u00b0|\\p{L}+)");
  private static final Pattern EQUATION =
      Pattern.compile("(\\p{L}[\\p{L}. ]*)=([^=,;]*?\\b[xy]\\b[^=,;]*)");
  private static final Pattern TERM =
      Pattern.compile("([+\\u2212-]?)\\s*\\b([xy])\\s*[*\u00b7]?\\s*(cos|sin|sen)\\b");

  /** A turn by some degrees, with the equations that say what it does to x and y. */
  private void turned(String line) {
    Map<Boolean, Double> angles = new HashMap<>();
    Matcher turn = TURNED.matcher(line);
    OptionalDouble degrees = OptionalDouble.empty();
    while (degrees.isEmpty() && turn.find()) {
      boolean unit = turn.group(2).equals("\u00b0") || Words.of(turn.group(2)).has("degrees");
      degrees = unit ? Numbers.of(turn.group(1), true) : degrees;
    }
    Matcher equation = EQUATION.matcher(line);
    while (degrees.isPresent() && equation.find()) {
      Words axis = Words.of(equation.group(1));
      double[] along = new double[2];
      Matcher term = TERM.matcher(equation.group(2));
      while (term.find()) {
        double angle = Math.toRadians(degrees.getAsDouble());
        double size = term.group(3).equals("cos") ? Math.cos(angle) : Math.sin(angle);
        boolean minus = !term.group(1).isEmpty() && !term.group(1).equals("+");
        along[term.group(2).charAt(0) - 'x'] = minus ? -size : size;
      }
      if (axis.has("ra") != axis.has("dec") && along[0] * along[0] + along[1] * along[1] > 0.9) {
        angles.put(axis.has("dec"), Math.toDegrees(Math.atan2(along[1], along[0])));
      }
    }
    if (angles.size() == 2) {
      turned = Optional.of(angles);
    }
  }

  /** Whether a sentence tells how the camera lies, so that the log has its axes. */
  public boolean isCameraTurned() {
    return camera.isPresent() || turned.isPresent();
  }

  /** How the camera lies on the sky, where a sentence tells it. */
  public Optional<CameraAxes> camera() {
    boolean senses = positive(false, false).isPresent() && positive(false, true).isPresent();
    return camera.or(
        () ->
            turned
                .filter(any -> senses)
                .map(
                    angles ->
                        new CameraAxes(
                            OptionalDouble.of(angles.get(false) + against(false)),
                            OptionalDouble.of(angles.get(true) + against(true)),
                            Optional.empty())));
  }

  private double against(boolean dec) {
    return positive(false, dec).filter(to -> to.sign() < 0).isPresent() ? 180 : 0;
  }

  /** The set point along an axis, {@code x} or {@code y}, where a sentence tells it. */
  OptionalDouble mark(char axis) {
    Double told = marks.get(axis == 'r' ? 'x' : axis == 'd' ? 'y' : axis);
    return told == null ? OptionalDouble.empty() : OptionalDouble.of(told);
  }

  private void missing(String line) {
    for (String clause : line.split("[;|]|,(?=\\s)")) {
      if (Words.of(clause).hasAny("missing", "lost")) {
        Matcher number = NUMBER.matcher(clause);
        while (number.find()) {
          if (number.group().length() > 1) {
            missing.add(number.group()); // a single digit is a code
          }
        }
      }
    }
  }

  /** Whether a sentence tells what letters stand for. */
  public boolean explainsLetters() {
    return directions.keySet().stream().anyMatch(code -> code.length() <= 2);
  }

  /** What a code stands for. */
  Optional<Direction> direction(String code) {
    return Optional.ofNullable(directions.get(code));
  }

  /** What a code in a column of events stands for. */
  public Optional<EventRule.Kind> event(String code) {
    return Optional.ofNullable(events.get(code));
  }

  /** All codes that a sentence explains as events. */
  public Set<String> eventCodes() {
    return events.keySet();
  }

  /** Whether a number is said to stand for no star. */
  boolean saysMissing(String number) {
    return missing.contains(number);
  }

  boolean explainsMissing() {
    return !missing.isEmpty();
  }

  /** Where positive offsets, or pulses, of an axis are said to point. */
  public Optional<Direction> positive(boolean pulse, boolean dec) {
    return contradicted.getOrDefault(pulse, Set.of()).contains(dec)
        ? Optional.empty()
        : Optional.ofNullable(positive.getOrDefault(pulse, Map.of()).get(dec));
  }

  /** The unit that offsets, or pulses, are said to be in. */
  public Optional<String> unit(boolean pulse) {
    Set<String> told = units.getOrDefault(pulse, Set.of());
    return told.size() == 1 ? told.stream().findFirst() : Optional.empty(); // else they disagree
  }

  public boolean eastIsO() {
    return eastIsO;
  }
}
