package io.github.roundstar.ingest.layout;

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
  private static final String PLAIN_DATE = "[0-9]{1,4}[-./][0-9]{1,2}[-./][0-9]{2,4}";
  private static final String DATE_TEXT =
      "(?:"
          + PLAIN_DATE
          + "|[0-9]{1,2}[. ] ?(?:de )?\\p{L}{3,10}[. ] ?(?:de )?[0-9]{4}"
          + "|\\p{L}{3,10}[. ] ?[0-9]{1,2},? [0-9]{4}"
          + "|[0-9]{1,2}-\\p{L}{3,9}-[0-9]{4})";
  private static final String CLOCK_TEXT =
      "[0-9]{1,2}[:h][0-9]{2}(?:[:m][0-9]{2}(?:[.,][0-9]+)?s?)?(?: ?[aApP][.]?[mM][.]?)?"
          + "(?: ?(?:Z|UTC|[+-][0-9]{2}:?[0-9]{2})(?![0-9\\p{L}]))?";
  private static final Pattern INSTANT =
      Pattern.compile(
          "(?:"
              + DATE_TEXT
              + "(?:T| |, | - |_|\\t| at | um | \u00e0 )"
              + CLOCK_TEXT
              + "|[0-9]{8}T[0-9]{6}Z?)");
  private static final Pattern DATE =
      Pattern.compile("(?<![0-9])" + DATE_TEXT + "(?![0-9])|(?<![0-9])20[0-9]{6}(?![0-9])");
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
    dates(lines, time, rules);
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
      Optional<Setting> byUnit = byUnit(line.substring(value.end()), label);
      String unit = unitText(label, line.substring(value.end()));
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
                unitText(label, rest),
                line));
      }
    }
    return all;
  }

  /** Instants and dates are no values of other settings. */
  private static String masked(String line) {
    StringBuilder text = new StringBuilder(line);
    for (Pattern pattern : List.of(INSTANT, DATE)) {
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

  private static final Pattern PER_PIXEL =
      Pattern.compile(
          "^\\s*[\\[(]?([^0-9,;|]{1,24}?)\\s*(?:/|\\b(?:per|pro|je|par|por|al|a|ao|cada)\\b)\\s*(\\p{L}+)");
  private static final Pattern MICRON =
      Pattern.compile(
          "^\\s*[\\[(]?(?:um|\u00b5m|\u03bcm|micron\\w*|mikro\\w*|micro\\w*)(?!\\p{L})");

  /** Arcseconds per pixel are the scale, and micrometres the size of a pixel, by any name. */
  private static Optional<Setting> byUnit(String rest, String label) {
    Matcher per = PER_PIXEL.matcher(rest);
    if (label.isEmpty()) {
      return Optional.empty();
    }
    if (per.find()
        && Words.unit(per.group(1)).filter("arcsec"::equals).isPresent()
        && Words.unit(per.group(2)).filter("px"::equals).isPresent()) {
      return Optional.of(Setting.SCALE);
    }
    return MICRON.matcher(rest).find() && !Words.of(label).has("other")
        ? Optional.of(Setting.PIXEL_SIZE)
        : Optional.empty();
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

  /** The unit behind a value, or in the label. */
  private static String unitText(String label, String rest) {
    Matcher behind = Pattern.compile("^\\s*[\"'\\[(]?([^\\s,;|\\[\\](){}\\t]+)").matcher(rest);
    String after =
        rest.startsWith("\t") || rest.startsWith(",") || rest.startsWith(";")
            ? ""
            : behind.find() ? behind.group(1) : "";
    Matcher within =
        Pattern.compile("(?:[\\[(]\\s*([^\\])]+)[\\])]|[_ ](\\p{L}+|%|\"))$").matcher(label);
    String inside =
        within.find() ? within.group(1) == null ? within.group(2) : within.group(1) : "";
    String twoWords = rest.strip().toLowerCase(Locale.ROOT);
    boolean arc =
        Words.of(twoWords.substring(0, Math.min(24, twoWords.length()))).has("unit arcsec");
    return (after.isEmpty() ? inside : arc && !after.contains("%") ? "arcsec " + after : after)
        .strip();
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
    Optional<String> unit = unit(told.setting, told.unit, value, parts);
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

  /** The unit as written; where none is, the size of the value must tell. */
  private Optional<String> unit(Setting setting, String text, double value, boolean parts) {
    String unit = text.toLowerCase(Locale.ROOT);
    Words words = Words.of(unit);
    return switch (setting) {
      case GUIDE_RATE -> guideRate(unit, words, value);
      case EXPOSURE -> exposure(words, unit, value);
      case HOUR_ANGLE, RIGHT_ASCENSION -> hours(setting, unit, words, value, parts);
      case SCALE -> value > 0.05 && value < 60 ? Optional.of("arcsec/px") : Optional.empty();
      case PIXEL_SIZE -> value > 0.5 && value < 60 ? Optional.of("um") : Optional.empty();
      case FOCAL_LENGTH -> value >= 20 && value < 20_000 ? Optional.of("mm") : Optional.empty();
      case BINNING -> value >= 1 && value <= 8 ? Optional.of("px") : Optional.empty();
      case DECLINATION, LATITUDE -> Math.abs(value) <= 90 ? Optional.of("deg") : Optional.empty();
      case LONGITUDE, CAMERA_ANGLE ->
          Math.abs(value) <= 360 ? Optional.of("deg") : Optional.empty();
      default -> Optional.of(setting.units().get(0));
    };
  }

  private Optional<String> hours(
      Setting setting, String unit, Words words, double value, boolean parts) {
    if (unit.startsWith("deg")
        || unit.startsWith("\u00b0")
        || unit.startsWith("grad")
        || unit.startsWith("grau")
        || unit.startsWith("graden")) {
      return Optional.of("deg");
    }
    if (parts || words.has("hours")) {
      return Math.abs(value) <= 24 ? Optional.of("h") : Optional.of("deg");
    }
    return Math.abs(value) > 24 ? Optional.of("deg") : asked(setting, value);
  }

  private Optional<String> guideRate(String unit, Words words, double value) {
    if (unit.contains("%")
        || unit.startsWith("percent")
        || unit.startsWith("prozent")
        || unit.startsWith("pour")
        || unit.startsWith("por")
        || unit.startsWith("per")
        || unit.startsWith("procent")) {
      return Optional.of("percent");
    }
    if (words.has("unit arcsec")) {
      return Optional.of("arcsec/s");
    }
    if (unit.startsWith("x") || unit.startsWith("\u00d7") || unit.startsWith("sid") || value <= 1) {
      return Optional.of("sidereal");
    }
    return asked(Setting.GUIDE_RATE, value);
  }

  private Optional<String> exposure(Words words, String unit, double value) {
    if (words.has("unit ms") || unit.startsWith("milli")) {
      return Optional.of("ms");
    }
    if (words.has("unit s") || unit.startsWith("s") && !unit.startsWith("set") || value <= 30) {
      return Optional.of("s");
    }
    return value >= 100 ? Optional.of("ms") : asked(Setting.EXPOSURE, value);
  }

  private Optional<String> asked(Setting setting, double value) {
    decisions.add(
        Decision.open(
            setting.word(),
            "a line tells " + value + " without a unit",
            String.format(
                Locale.ROOT,
                "[[setting]]\nmeans = \"%s\"\nvalue = \"%s\"\nunit = \"%s\"   # or another of %s",
                setting.word(),
                value,
                setting.units().get(0),
                setting.units())));
    return Optional.empty();
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
          String words = EventLines.label(line, "set point");
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

  private static void add(
      Setting setting,
      String expression,
      List<String> lines,
      List<SettingRule> rules,
      List<Decision> decisions) {
    rules.add(
        new SettingRule(
            setting, Optional.of(LinePattern.of(expression)), Optional.empty(), Optional.empty()));
    decisions.add(
        Decision.certain(setting.word(), "told by a line", "a date where it is needed")
            .before(
                Math.max(0, lines.stream().filter(line -> holds(DATE, line)).count() - 1)
                    + " other lines with a date"));
  }

  private void dates(List<String> lines, TimeForm time, List<SettingRule> rules) {
    if (time.kind().isElapsed()) {
      Optional<String> start = instantOfStart(lines);
      start.ifPresent(expression -> add(Setting.START, expression, lines, rules, decisions));
      if (start.isEmpty()) {
        apart(lines, rules);
      }
    } else if (time.kind() == TimeForm.Kind.CLOCK
        && lines.stream().anyMatch(line -> holds(DATE, line))) {
      add(Setting.DATE, dateIn(lines), lines, rules, decisions);
    }
  }

  /** The plainest expression that finds the dates of some lines. */
  private static String dateIn(List<String> lines) {
    Pattern plain = Pattern.compile("(?<![0-9])(?<value>" + PLAIN_DATE + ")(?![0-9])");
    boolean all =
        lines.stream().noneMatch(line -> holds(DATE, line) && !plain.matcher(line).find());
    return all ? plain.pattern() : "(?<value>" + DATE.pattern() + ")";
  }

  private static boolean holds(Pattern pattern, String line) {
    Matcher found = pattern.matcher(line);
    while (found.find()) {
      ClockText read = ClockText.of(found.group(), TimeForm.DateOrder.DMY);
      if (read.date()
          .or(() -> ClockText.of(found.group(), TimeForm.DateOrder.MDY).date())
          .isPresent()) {
        return true;
      }
    }
    return false;
  }

  /** Of lines with an instant, those that speak of a start, if any does. */
  private static Optional<String> instantOfStart(List<String> lines) {
    List<String> all = lines.stream().filter(line -> holds(INSTANT, line)).toList();
    Set<String> starts = new LinkedHashSet<>();
    for (String line : all) {
      Matcher found = INSTANT.matcher(line);
      if (found.find() && Words.of(TableHead.withoutLead(line)).has("start")) {
        starts.add(RunLines.beginning(line.substring(0, found.start())));
      }
    }
    Pattern plain = Pattern.compile(PLAIN_DATE + "[T ,_]+" + CLOCK_TEXT);
    boolean simple = all.stream().allMatch(line -> plain.matcher(line).find());
    String value = "(?<value>" + (simple ? plain : INSTANT).pattern() + ")";
    if (starts.size() == 1
        && starts.iterator().next().length() >= 3
        && starts.size() < all.size()) {
      return Optional.of(
          "^" + LinePattern.quoted(starts.iterator().next()).replace("\t", "\\t") + ".*?" + value);
    }
    return all.isEmpty() ? Optional.empty() : Optional.of(value);
  }

  /** The date in one line, the clock time of the start in another. */
  private static final Pattern START_CLOCK =
      Pattern.compile("(?<![0-9:])" + CLOCK_TEXT + "(?![0-9:])");

  private void apart(List<String> lines, List<SettingRule> rules) {
    boolean dated = lines.stream().anyMatch(line -> holds(DATE, line));
    Optional<String> clock =
        lines.stream()
            .filter(line -> Words.of(line).hasAny("start") && START_CLOCK.matcher(line).find())
            .findFirst();
    if (dated && clock.isPresent()) {
      Matcher found = START_CLOCK.matcher(clock.get());
      found.find();
      String before = RunLines.beginning(clock.get().substring(0, found.start()));
      if (before.length() >= 3) {
        add(Setting.DATE, dateIn(lines), lines, rules, decisions);
        add(
            Setting.START,
            "^"
                + LinePattern.quoted(before).replace("\t", "\\t")
                + "[^0-9]*(?<value>"
                + CLOCK_TEXT
                + ")",
            lines,
            rules,
            decisions);
      }
    }
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
