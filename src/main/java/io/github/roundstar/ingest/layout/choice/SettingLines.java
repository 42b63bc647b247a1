package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.SettingRule;
import io.github.roundstar.ingest.layout.TimeForm;
import io.github.roundstar.ingest.layout.text.EventWords;
import io.github.roundstar.ingest.layout.text.Numbers;
import io.github.roundstar.ingest.layout.text.TableHead;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.ArrayList;
import java.util.EnumMap;
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

/**
 * Finds settings in the lines that are no rows: a label with a known word, then a value, wherever
 * they stand in the line and whatever parts them.
 */
final class SettingLines {
  private static final int MOST_RULES = 12;
  private static final String DECIMAL = "[+\u2212-]?[0-9]{1,6}(?:[.,][0-9]+)?";
  private static final String PARTS =
      "[+\u2212-]?[0-9]{1,3}(?:[:d\u00b0\u00bah]| ?\u00b0 ?| ?h ?) ?[0-9]{1,2}"
          + "(?:(?:[:m'\u2032]| ?m ?) ?[0-9]{1,2}(?:[.,][0-9]+)?)?";
  private static final Pattern VALUE =
      Pattern.compile(
          "(?:(?<![0-9.\\p{L}+\u2212-])(?<![0-9],)|(?<=[=:_])|(?<![0-9.,])(?=[+\u2212-]))(?:"
              + PARTS
              + "|"
              + DECIMAL
              + ")");
  private static final Pattern LABEL_END = Pattern.compile("[;|\\t{}]|,(?=[ \"])|, ");

  /** Settings by the word for them in the dictionary; longer phrases win over shorter ones. */
  private static final Map<Setting, String> CONCEPTS = new LinkedHashMap<>();

  private static final Set<Setting> ANGLES =
      Set.of(Setting.DECLINATION, Setting.RIGHT_ASCENSION, Setting.HOUR_ANGLE);

  private static final Set<Setting> STRICT =
      Set.of(
          Setting.DECLINATION,
          Setting.RIGHT_ASCENSION,
          Setting.HOUR_ANGLE,
          Setting.LATITUDE,
          Setting.LONGITUDE,
          Setting.CAMERA_ANGLE);

  static {
    CONCEPTS.put(Setting.PIXEL_SIZE, "pixel size");
    CONCEPTS.put(Setting.SCALE, "scale");
    CONCEPTS.put(Setting.BINNING, "binning");
    CONCEPTS.put(Setting.FOCAL_LENGTH, "focal length");
    CONCEPTS.put(Setting.HOUR_ANGLE, "hour angle");
    CONCEPTS.put(Setting.CAMERA_ANGLE, "camera angle");
    CONCEPTS.put(Setting.LATITUDE, "latitude");
    CONCEPTS.put(Setting.LONGITUDE, "longitude");
    CONCEPTS.put(Setting.EXPOSURE, "exposure");
    CONCEPTS.put(Setting.GUIDE_RATE, "guide rate");
    CONCEPTS.put(Setting.DECLINATION, "declination");
    CONCEPTS.put(Setting.RIGHT_ASCENSION, "right ascension");
  }

  private final boolean decimalComma;
  private final boolean eastIsO;
  private final List<Decision> decisions;

  /** The first value beside a word for a setting that means something else. */
  private final Map<Setting, String> passedOver = new EnumMap<>(Setting.class);

  SettingLines(boolean decimalComma, boolean eastIsO, List<Decision> decisions) {
    this.decimalComma = decimalComma;
    this.eastIsO = eastIsO;
    this.decisions = decisions;
  }

  /** One value in a line, with the words before it and what follows. */
  private record Told(Setting setting, String label, String value, String unit, String line) {}

  /** Rules for what the lines tell. */
  List<SettingRule> rules(List<String> lines, TimeForm time) {
    Map<Setting, Map<String, Told>> found = new EnumMap<>(Setting.class);
    Set<String> seen = new LinkedHashSet<>();
    for (String line : lines) {
      String family = line.replaceAll("[0-9]+", "0");
      if (line.length() <= 1000 && seen.size() < 2000 && seen.add(family)) {
        for (Told told : told(TableHead.withoutLead(line))) {
          found
              .computeIfAbsent(told.setting, any -> new LinkedHashMap<>())
              .putIfAbsent(told.label, told);
        }
      }
    }
    List<SettingRule> rules = new ArrayList<>();
    for (Map.Entry<Setting, Map<String, Told>> entry : found.entrySet()) {
      entry.getValue().values().stream()
          .limit(MOST_RULES)
          .forEach(told -> rule(told, lines).ifPresent(rules::add));
    }
    pierSides(lines, rules);
    setPoints(lines, rules);
    new DateLines(decisions).rules(lines, time, rules);
    return rules;
  }

  /** What one line tells. */
  private List<Told> told(String line) {
    List<Told> all = new ArrayList<>();
    String masked = masked(line);
    Matcher value = VALUE.matcher(masked);
    int from = 0;
    while (value.find()) {
      String before = masked.substring(from, value.start());
      String label = label(before);
      from = value.end();
      Optional<Setting> byUnit = SettingUnits.byUnit(line.substring(value.end()), label);
      String unit = SettingUnits.textAt(label, line.substring(value.end()));
      boolean parts = Numbers.of(value.group(), true).isEmpty();
      Optional<Setting> named = byUnit.or(() -> concept(label));
      boolean own =
          byUnit.isPresent() || named.filter(s -> isAbout(s, label, unit, parts)).isPresent();
      boolean ofLoop =
          named.filter(ANGLES::contains).isPresent()
              && Words.of(masked.substring(0, value.start())).has("side matter");
      Optional<Setting> setting = named.filter(any -> own && !ofLoop);
      if (named.isPresent() && setting.isEmpty()) {
        passedOver.putIfAbsent(
            named.get(), value.group() + ", which \"" + label + "\" tells of something else");
      }
      if (setting.isPresent()) {
        String rest = line.substring(value.end());
        all.add(
            new Told(
                setting.get(),
                label,
                line.substring(value.start(), value.end()),
                SettingUnits.textAt(label, rest),
                line));
      }
    }
    return all;
  }

  /** Instants and dates are no values of other settings. */
  private static String masked(String line) {
    StringBuilder text = new StringBuilder(line);
    for (Pattern pattern : List.of(DateLines.INSTANT, DateLines.DATE)) {
      Matcher found = pattern.matcher(text);
      while (found.find()) {
        for (int i = found.start(); i < found.end(); i++) {
          text.setCharAt(i, '#');
        }
      }
    }
    return text.toString();
  }

  /** The words right before a value, up to the sign that parts fields. */
  private static String label(String before) {
    String[] pieces = LABEL_END.split(before);
    for (int i = pieces.length - 1; i >= 0; i--) {
      String piece = pieces[i];
      if (piece.chars().anyMatch(Character::isLetter)) {
        String bare =
            piece.replaceAll("^[^\\p{L}\u03b1\u03b4]+|[^\\p{L}\u03b1\u03b4\\])%\"]+$", "");
        int sentence = Math.max(bare.lastIndexOf(": "), bare.lastIndexOf(". "));
        boolean tail =
            sentence > 0 && bare.substring(sentence).chars().anyMatch(Character::isLetter);
        return tail ? bare.substring(sentence + 2).strip() : bare;
      }
    }
    return "";
  }

  /** The setting that a label has a word for. */
  private static Optional<Setting> concept(String label) {
    if (label.isEmpty() || label.length() > 60) {
      return Optional.empty();
    }
    Words words = Words.of(label);
    Setting best = null;
    for (Map.Entry<Setting, String> entry : CONCEPTS.entrySet()) {
      if (words.has(entry.getValue()) && best == null) {
        best = entry.getKey();
      }
    }
    if (best == null || best == Setting.PIXEL_SIZE && words.has("scale") && !saysSize(words)) {
      best = best == null ? null : Setting.SCALE;
    }
    return Optional.ofNullable(best);
  }

  /** Whether a label with a word for a setting tells nothing else. */
  private static boolean isAbout(Setting setting, String label, String unit, boolean parts) {
    Words words = Words.of(label);
    boolean side = words.has("side matter") && !isRateOfGuiding(setting, words);
    return !side
        && (!STRICT.contains(setting) || isOnly(words, CONCEPTS.get(setting), unit, parts));
  }

  /** Whether a label says nothing else: RA strength is no right ascension. */
  private static boolean isOnly(Words words, String concept, String unit, boolean parts) {
    if (words.isJust(concept)) {
      return true;
    }
    int last = -1;
    List<String> tokens = words.tokens();
    for (int i = 0; i < tokens.size(); i++) {
      last = endsPhrase(tokens, i, concept) ? i : last;
    }
    boolean angle = Words.of(unit).has("degrees") || unit.startsWith("\u00b0") || parts;
    List<String> others = new ArrayList<>(tokens.subList(last + 1, tokens.size()));
    if (!angle) {
      others.addAll(tokens.subList(0, Math.max(0, last - 1)));
      others.addAll(last > 0 ? tokens.subList(last - 1, last) : List.of());
    }
    return others.stream()
        .map(Words::of)
        .allMatch(word -> word.has("of what") || word.has(concept));
  }

  private static boolean endsPhrase(List<String> tokens, int end, String concept) {
    for (int from = Math.max(0, end - 2); from <= end; from++) {
      if (Words.of(String.join(" ", tokens.subList(from, end + 1))).isJust(concept)
          || from == end && Words.of(tokens.get(end)).has(concept)) {
        return true;
      }
    }
    return false;
  }

  private static boolean saysSize(Words words) {
    return words.tokens().stream()
        .anyMatch(
            t ->
                t.matches(
                    "size|pitch|pixelgrosse|pixelgroesse|grosse|taille|tamano|dimension.*|tamanho|lato|pixelgrootte|grootte|pixelmaat"));
  }

  /** The speed of pulses is a setting, though pulses themselves are side matter. */
  private static boolean isRateOfGuiding(Setting setting, Words words) {
    return setting == Setting.GUIDE_RATE
            && words.has("pulse")
            && !words.tokens().stream().anyMatch(t -> t.matches("min.*|max.*|limit.*"))
        || setting == Setting.SCALE && !words.says("gain");
  }

  private Optional<SettingRule> rule(Told told, List<String> lines) {
    double value = Numbers.sexagesimal(told.value, decimalComma).orElse(Double.NaN);
    if (Double.isNaN(value)) {
      value = Numbers.sexagesimal(told.value, !decimalComma).orElse(Double.NaN);
    }
    if (Double.isNaN(value)) {
      return Optional.empty();
    }
    boolean parts = Numbers.of(told.value, true).isEmpty();
    Optional<String> unit = new SettingUnits(decisions).of(told.setting, told.unit, value, parts);
    if (unit.isEmpty()) {
      return Optional.empty();
    }
    LinePattern pattern =
        LinePattern.of(
            "(?<!\\p{L})(?<!\\p{L}\\p{L}[ _])"
                + LinePattern.quoted(told.label).replace("\t", "\\t")
                + "[^\\p{L}0-9+\u2212-]{0,60}(?<value>"
                + (parts ? PARTS : DECIMAL)
                + ")");
    if (pattern.find(told.line).isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(said(told.setting, pattern, unit, lines));
  }

  private SettingRule said(
      Setting setting, LinePattern pattern, Optional<String> unit, List<String> lines) {
    Set<String> values = new LinkedHashSet<>();
    for (String line : lines) {
      pattern.find(line).flatMap(m -> LinePattern.group(m, "value")).ifPresent(values::add);
    }
    String some = values.size() == 1 ? values.iterator().next() : values.size() + " values";
    decisions.add(
        Decision.certain(
                setting.word(), some + unit.map(u -> " " + u).orElse(""), "a line with its name")
            .before(passedOver.getOrDefault(setting, "no other line has a word for it")));
    return new SettingRule(setting, Optional.of(pattern), Optional.empty(), unit);
  }

  /** A word for the pier or the tube, then one for east or west, but none for looking there. */
  private void pierSides(List<String> lines, List<SettingRule> rules) {
    Pattern word = Pattern.compile("\\p{L}+");
    Set<String> expressions = new LinkedHashSet<>();
    Set<String> families = new LinkedHashSet<>();
    for (String line : lines) {
      if (line.length() > 1000
          || expressions.size() > MOST_RULES
          || !families.add(line.replaceAll("[0-9]+", "0"))) {
        continue;
      }
      Matcher words = word.matcher(line);
      int pierAt = -1;
      int since = 0;
      while (words.find()) {
        String text = words.group();
        if (Words.of(text).has("pier side")) {
          pierAt = pierAt < 0 || since > 4 ? words.start() : pierAt;
          since = 0;
        } else if (pierAt >= 0 && since <= 4 && isSide(text)) {
          String between = line.substring(pierAt, words.start());
          expressions.add(
              "(?<!\\p{L})"
                  + LinePattern.quoted(between).replace("\t", "\\t")
                  + "(?<value>"
                  + sides(text)
                  + ")(?!\\p{L})");
          pierAt = -1;
        } else {
          since++;
          pierAt = looks(text) ? -1 : pierAt;
        }
      }
    }
    for (String expression : expressions) {
      rules.add(said(Setting.PIER_SIDE, LinePattern.of(expression), Optional.empty(), lines));
    }
  }

  /** Where the star should be, such as {@code the mark is at x = 261.8, y = 509.7}. */
  private void setPoints(List<String> lines, List<SettingRule> rules) {
    Pattern pair =
        Pattern.compile(
            "(?<![\\p{L}])[xX]\\s*[=:]?\\s*"
                + DECIMAL
                + "[^0-9]{1,12}?(?<![\\p{L}])[yY]\\s*[=:]?\\s*"
                + DECIMAL);
    for (String line : lines) {
      if (line.length() < 400 && Words.of(line).has("set point") && pair.matcher(line).find()) {
        for (String axis : List.of("x", "y")) {
          String expression =
              "(?<!\\p{L})["
                  + axis
                  + axis.toUpperCase(Locale.ROOT)
                  + "]\\s*[=:]?\\s*(?<value>"
                  + DECIMAL
                  + ")";
          String words = EventWords.label(line, "set point");
          LinePattern pattern = LinePattern.of(LinePattern.quoted(words) + ".*?" + expression);
          if (pattern.find(line).isPresent()) {
            rules.add(
                said(
                    axis.equals("x") ? Setting.SET_X : Setting.SET_Y,
                    pattern,
                    Optional.empty(),
                    lines));
          }
        }
        return;
      }
    }
  }

  private static boolean looks(String text) {
    return text.toLowerCase(Locale.ROOT)
        .matches(
            "look.*|point.*|facing|blick.*|zeig.*|schaut.*|regard.*|pointe.*|mira.*|apunta.*|guarda.*|punta.*|olha.*|aponta.*|kijkt|wijst");
  }

  private boolean isSide(String text) {
    Optional<Direction> to =
        text.length() == 1
            ? Words.letter(text, eastIsO).filter(any -> Character.isUpperCase(text.charAt(0)))
            : Words.of(text).direction(eastIsO);
    boolean ambiguous = text.equals("O") && eastIsO;
    return !ambiguous && to.filter(d -> d == Direction.EAST || d == Direction.WEST).isPresent();
  }

  private static String sides(String text) {
    return text.length() == 1 ? "[EWOL]" : "\\p{L}+";
  }

  /** Whether some rule tells a setting. */
  static boolean told(List<SettingRule> rules, Setting setting) {
    return rules.stream().anyMatch(rule -> rule.means() == setting);
  }

  /** Whether some rules tell the scale, or what it follows from. */
  static boolean scaleTold(List<SettingRule> rules) {
    return told(rules, Setting.SCALE)
        || told(rules, Setting.FOCAL_LENGTH) && told(rules, Setting.PIXEL_SIZE);
  }

  /** The first value that a rule finds. */
  static OptionalDouble value(
      List<SettingRule> rules, Setting setting, List<String> lines, boolean comma) {
    for (SettingRule rule : rules) {
      if (rule.means() == setting && rule.line().isPresent()) {
        for (String line : lines) {
          Optional<String> text =
              rule.line().get().find(line).flatMap(m -> LinePattern.group(m, "value"));
          if (text.isPresent()) {
            return Numbers.sexagesimal(text.get(), comma);
          }
        }
      }
    }
    return OptionalDouble.empty();
  }
}
