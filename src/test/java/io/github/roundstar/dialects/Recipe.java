package io.github.roundstar.dialects;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * How a log is written: every choice that a person makes who lets a program write one. The defaults
 * make a log that reads well (plain CSV, English names with units, ISO time in UTC, signs told);
 * {@link Obstacle}s change it.
 */
final class Recipe {
  final Random random;
  final Map<String, String> chosen = new HashMap<>();

  /** Whole phrases in place of words, or null. */
  Phrases phrases;

  /** Those that this log has. */
  final Set<String> whole = new HashSet<>();

  private final Map<String, Integer> indices = new HashMap<>();

  Tongue tongue = Tongue.ENGLISH;
  boolean plainestWords = true;
  boolean accents = true;
  Style style = Style.SNAKE;
  boolean quantityFirst;
  boolean delta;

  Form form = Form.COMMA;
  Lead lead = Lead.NONE;
  boolean quoteAll;
  boolean quoteText;
  boolean trailingDelimiter;
  boolean leadingBlanks;
  boolean twoLines;
  String marker = "# ";

  Names names = Names.ABOVE;
  Axes offsetAxes = Axes.RA_DEC;
  Axes pulseAxes = Axes.RA_DEC;
  boolean axesSentence;

  UnitPlace unitPlace = UnitPlace.IN_NAME;
  Angle angle = Angle.ARCSEC;
  String arcsecMark = "arcsec";
  boolean scaleTold = true;
  boolean scaleByFocalLength;
  boolean bothUnits;

  Pulses pulses = Pulses.SIGNED;
  String pulseUnit = "ms";
  boolean localLetters;
  boolean lettersExplained = true;
  int raPulseSign = 1;
  int decPulseSign = 1;
  Told pulseSignTold = Told.NOT;
  boolean nextRow;
  boolean nextRowTold;

  int raSign = 1;
  int decSign = 1;
  Told offsetSignTold = Told.STAR_MINUS_MARK;
  boolean offsetLetters;

  Clock clock = Clock.ISO;
  Zone zone = Zone.Z;
  int clockDecimals = 3;
  boolean dateInTitle;

  int decimals = 3;
  boolean decimalComma;
  String minus = "-";
  boolean plus;
  boolean noLeadingZero;
  boolean scientific;
  boolean thousands;

  String missing = "";
  boolean missingExplained;
  boolean zerosWhileLost;
  boolean lostRowsAbsent;

  SettingsStyle settings = SettingsStyle.KEY_COLON;
  boolean declinationTold = true;
  boolean rateTold = true;
  boolean pierTold = true;
  boolean gainTold;

  Events events = Events.NONE;
  boolean settlingTold = true;
  int runs = 1;
  RunMark runMark = RunMark.LINE;
  boolean flip;

  boolean worm = true;
  boolean timeLast;
  boolean shuffled;
  boolean swapHalfWay;
  Source source = Source.OFFSETS;
  final Set<Extra> extras = EnumSet.of(Extra.SNR);
  final Set<Around> around = EnumSet.noneOf(Around.class);

  String charset = "UTF-8";
  boolean byteOrderMark;
  String lineEnd = "\n";
  boolean noFinalLineEnd;

  final List<Obstacle> obstacles = new ArrayList<>();

  Recipe(Random random) {
    this.random = random;
  }

  /** A word of the log's tongue, the same one wherever the log uses it. */
  String word(String key) {
    String found = chosen.get(key);
    if (found == null && phrases != null) {
      found = phrase(key);
      if (found != null) {
        chosen.put(key, found);
      }
    }
    if (found == null) {
      List<String> all = tongue.words(key);
      found = plainestWords ? all.get(0) : all.get(random.nextInt(all.size()));
      chosen.put(key, found);
    }
    return spell(found);
  }

  /**
   * Writes with whole phrases in place of words. Phrases tell axes and units, but no way of the
   * sky.
   */
  void take(Phrases taken) {
    phrases = taken;
    tongue = taken.tongue();
    style = Style.SPACED;
    delta = false;
    offsetAxes = offsetAxes == Axes.EAST_NORTH ? Axes.RA_DEC : offsetAxes;
    pulseAxes = pulseAxes == Axes.EAST_NORTH ? Axes.RA_DEC : pulseAxes;
    if (!missing.isEmpty() && !missing.matches(".*[0-9].*")) {
      int at = taken.index("missing-value", random, p -> p.matches("[^0-9 ,;|]+"));
      missing = at < 0 ? missing : taken.all("missing-value").get(at);
    }
    if (form.delimiter != null) {
      int at = taken.index("comment-line-prefix", random, p -> true);
      marker = at < 0 ? marker : taken.all("comment-line-prefix").get(at) + " ";
    }
  }

  /** A whole phrase for a key; null where there is none that fits. */
  private String phrase(String key) {
    boolean line = List.of("dither", "lost", "settled", "end").contains(key) && events.lines();
    String concept = Phrases.concept(key);
    String event = line ? "event:" + concept : concept;
    String from = line && random.nextBoolean() && !phrases.all(event).isEmpty() ? event : concept;
    int at =
        phrases.index(
            from,
            random,
            p ->
                switch (key) {
                  case "scale" -> Phrases.isPlain(p) && !p.matches("(?i).*\\bpx ?(per|/) ?arc.*");
                  case "rate" ->
                      Phrases.isPlain(p)
                          && Phrases.unit(p).isEmpty()
                          && !p.matches("(?i).*(percent|prozent|pour ?cent|por ?ciento|arc).*");
                  case "exposureset", "exposure" ->
                      Phrases.isPlain(p) && !Phrases.unit(p).equals("ms");
                  case "pixelsize", "focal", "declination", "gain" -> Phrases.isPlain(p);
                  case "fwhm" -> fits(p, unitOfAngles());
                  default -> true;
                });
    if (at < 0) {
      return null;
    }
    String found = phrases.all(from).get(at);
    whole.add(spell(found));
    return found;
  }

  private String unitOfAngles() {
    return angle == Angle.ARCSEC ? "arcsec" : angle == Angle.PIXEL ? "px" : "mas";
  }

  /** Whether a phrase names no other unit than the log has, nor one where the log has none. */
  private boolean fits(String phrase, String unit) {
    String told = Phrases.unit(phrase);
    return Phrases.isPlain(phrase)
        && (told.isEmpty() || told.equals(unit) && unitPlace != UnitPlace.NONE);
  }

  /** The phrase for one of two or more columns that belong together; null where none fits. */
  String paired(String group, String concept, String unit) {
    if (phrases == null) {
      return null;
    }
    Integer at = indices.get(group);
    if (at == null) {
      at = phrases.index(concept, random, p -> fits(p, unit));
      indices.put(group, at);
    }
    List<String> all = phrases.all(concept);
    if (at < 0 || at >= all.size() || !fits(all.get(at), unit)) {
      return null;
    }
    String found = spell(all.get(at));
    whole.add(found);
    return found;
  }

  /** A phrase for what is an average of an axis; null where none fits. */
  String average(boolean isRa) {
    String other =
        isRa ? "(?i).*(d[e\u00e9]c|dek|\u03b4).*" : ".*(RA|AD|AR|Ra|ra\\b|\u03b1|[Rr]e[kc]t).*";
    int at = phrases.index("average", random, p -> fits(p, unitOfAngles()) && !p.matches(other));
    if (at < 0) {
      return null;
    }
    String found = spell(phrases.all("average").get(at));
    whole.add(found);
    return found;
  }

  /** The word for a direction on the sky. */
  String way(Tongue.Way way) {
    String found =
        phrases == null ? null : paired("way", "value-" + way.name().toLowerCase(Locale.ROOT), "");
    return found == null ? spell(tongue.word(way)) : found;
  }

  /** Text with or without accents, as this log has it. */
  String spell(String text) {
    return accents ? text : tongue.plain(text);
  }

  @SafeVarargs
  final <T> T pick(T... from) {
    return from[random.nextInt(from.length)];
  }

  boolean hasPulses() {
    return pulses != Pulses.NONE;
  }

  /** Whether one line holds cells side by side that names can stand above. */
  boolean tabular() {
    return form.delimiter != null;
  }

  /** Whether a cell may hold blanks or be empty. */
  boolean cellsMayHoldBlanks() {
    return form != Form.BLANK && form != Form.BLANK_RUNS && form != Form.KEY_EQUALS_BLANK;
  }

  boolean hasNames() {
    return names != Names.NONE || !tabular();
  }

  boolean unitToldByPlace() {
    return unitPlace != UnitPlace.NONE
            && (names != Names.NONE
                || unitPlace == UnitPlace.COMMENT
                || unitPlace == UnitPlace.IN_VALUE)
        || form == Form.PROSE;
  }

  boolean letters() {
    return pulses.letters || form == Form.PROSE;
  }

  /** Whether text tells the positive direction of an offset. */
  boolean signsTold() {
    return offsetSignTold != Told.NOT
        || offsetLetters
        || form == Form.PROSE
        || hasNames() && offsetAxes == Axes.EAST_NORTH
        || source == Source.PLACES_AND_MARK;
  }

  /** What a careful reader of this log has to ask. */
  Set<OpenFact> open() {
    Set<OpenFact> open = EnumSet.noneOf(OpenFact.class);
    boolean axisTold =
        axesSentence
            || form == Form.PROSE
            || source == Source.PLACES_AND_MARK
            || offsetLetters
            || hasNames() && offsetAxes.tellsAxis
            || hasPulses() && (letters() || hasNames() && pulseAxes.tellsAxis);
    if (!axisTold) {
      open.add(OpenFact.WHICH_IS_RA);
    }
    if (!unitToldByPlace() && !bothUnits && source == Source.OFFSETS) {
      open.add(OpenFact.UNIT_OF_OFFSETS);
    } else if (angle == Angle.PIXEL && !scaleTold && !bothUnits) {
      open.add(OpenFact.SCALE);
    }
    if (pulses == Pulses.UNSIGNED) {
      open.add(OpenFact.PULSE_DIRECTION);
    }
    if (clock == Clock.FRAMES_ONLY) {
      open.add(OpenFact.CADENCE);
    }
    if (source == Source.CAMERA_UNTOLD) {
      open.add(OpenFact.CAMERA_ANGLE);
    }
    if (source == Source.TWO_STARS) {
      open.add(OpenFact.WHICH_OFFSETS);
    }
    if (source == Source.PLACES_ONLY) {
      open.add(OpenFact.SET_POINT);
    }
    if (clock == Clock.SLASHES_UNTOLD) {
      open.add(OpenFact.DATE_ORDER);
    }
    if (!clock.dated && !dateInTitle) {
      open.add(OpenFact.DATE);
    }
    if (zone == Zone.UNTOLD && !clock.universal && (clock.dated || dateInTitle || !clock.elapsed)) {
      open.add(OpenFact.CLOCK_ZONE);
    }
    return open;
  }

  enum Style {
    SNAKE,
    CAMEL,
    PASCAL,
    SPACED,
    UPPER,
    KEBAB,
    DOTTED,
    GLUED,
    CUT
  }

  enum Form {
    COMMA(","),
    COMMA_BLANK(", "),
    SEMICOLON(";"),
    TAB("\t"),
    BLANK(" "),
    BLANK_RUNS("  "),
    FIXED_WIDTH(""),
    PIPES("|"),
    PIPE_FRAME(" | "),
    KEY_EQUALS_BLANK(null),
    KEY_EQUALS_COMMA(null),
    KEY_COLON(null),
    JSON(null),
    PROSE(null);

    /** Between cells; null where names stand beside values. */
    final String delimiter;

    Form(String delimiter) {
      this.delimiter = delimiter;
    }
  }

  /** What stands before every line. */
  enum Lead {
    NONE,
    TYPE_LETTER,
    LEVEL,
    TIME_IN_BRACKETS
  }

  enum Names {
    ABOVE,
    IN_COMMENT,
    LIST_IN_COMMENT,
    ONE_PER_LINE,
    TWO_LINES,
    REPEATED,
    NONE
  }

  enum Axes {
    RA_DEC(true),
    EAST_NORTH(true),
    XY(false),
    NUMBERS(false);

    final boolean tellsAxis;

    Axes(boolean tellsAxis) {
      this.tellsAxis = tellsAxis;
    }
  }

  enum UnitPlace {
    IN_NAME,
    SQUARE,
    ROUND,
    SLASH,
    LINE_BELOW,
    COMMENT,
    IN_VALUE,
    NONE
  }

  enum Angle {
    ARCSEC,
    PIXEL,
    MILLIARCSEC
  }

  enum Pulses {
    SIGNED(false),
    LETTER_BEHIND(true),
    LETTER_BEHIND_BLANK(true),
    LETTER_FRONT(true),
    LETTER_COLUMN(true),
    LETTER_COLUMN_BEFORE(true),
    WORD_COLUMN(true),
    PLUS_MINUS_COLUMN(false),
    ONE_COLUMN(false),
    FOUR_COLUMNS(true),
    UNSIGNED(false),
    NONE(false);

    final boolean letters;

    Pulses(boolean letters) {
      this.letters = letters;
    }
  }

  /** How a sentence tells what a sign means. */
  enum Told {
    NOT,
    STAR_MINUS_MARK,
    MARK_MINUS_STAR,
    MOUNT,
    STAR
  }

  enum Clock {
    ISO(true, false, false),
    ISO_BLANK(true, false, false),
    COMPACT(true, false, false),
    DATE_AND_TIME(true, false, false),
    TIME_ONLY(false, false, false),
    TWELVE_HOURS(true, false, false),
    TWELVE_HOURS_TIME_ONLY(false, false, false),
    SLASHES_TOLD(true, false, false),
    SLASHES_UNTOLD(true, false, false),
    DOTS(true, false, false),
    TEXT_MONTH(true, false, false),
    UNIX_SECONDS(true, true, false),
    UNIX_MILLIS(true, true, false),
    JULIAN(true, true, false),
    MODIFIED_JULIAN(true, true, false),
    ELAPSED_SECONDS(false, false, true),
    ELAPSED_RESTART(false, false, true),
    ELAPSED_MILLIS(false, false, true),
    ELAPSED_MINUTES(false, false, true),
    ELAPSED_HMS(false, false, true),
    FRAMES_AND_CADENCE(false, false, true),
    FRAMES_ONLY(false, false, true);

    final boolean dated;
    final boolean universal;
    final boolean elapsed;

    Clock(boolean dated, boolean universal, boolean elapsed) {
      this.dated = dated;
      this.universal = universal;
      this.elapsed = elapsed;
    }

    boolean hasDateText() {
      return dated && !universal;
    }
  }

  enum Zone {
    Z,
    OFFSET,
    OFFSET_IN_HEADER,
    NAME_IN_HEADER,
    UTC_IN_NAME,
    UTC_IN_HEADER,
    UNTOLD
  }

  enum SettingsStyle {
    KEY_COLON,
    EQUALS,
    NEXT_FIELD,
    ONE_LINE,
    UNIT_IN_KEY,
    SENTENCES,
    SECTION,
    DOTTED_LEADERS
  }

  enum Events {
    NONE,
    LINES,
    LINES_IN_COMMENT,
    LINES_WITH_TIME,
    LINES_WITH_STARS,
    FLAG_WORDS,
    FLAG_CODES,
    FLAG_LETTERS,
    NOTE_COLUMN,
    ONE_ZERO_COLUMNS;

    boolean lines() {
      return this == LINES
          || this == LINES_IN_COMMENT
          || this == LINES_WITH_TIME
          || this == LINES_WITH_STARS;
    }
  }

  enum RunMark {
    LINE,
    COLUMN,
    NAMES_AGAIN
  }

  /** From what offsets are to be had. */
  enum Source {
    OFFSETS,
    PLACES_AND_MARK,
    PLACES_ONLY,
    CAMERA_TOLD,
    CAMERA_UNTOLD,
    TWO_STARS
  }

  /** Columns that look alike but are not what is sought. */
  enum Extra {
    SNR,
    FLUX,
    PEAK,
    FWHM,
    RUNNING_RMS,
    RUNNING_MEAN,
    RUNNING_SUM,
    TOTAL_DISTANCE,
    PULSE_COPY,
    PULSE_COPY_ANGLE,
    PLACES,
    PLACES_AND_MARK,
    CAMERA_RAW,
    TEMPERATURE,
    COUNTER,
    CONSTANT,
    SMOOTHED,
    OTHER_STAR,
    ELAPSED_TOO,
    TEXT,
    EMPTY
  }

  /** What stands around the frames. */
  enum Around {
    TITLE,
    SECTIONS,
    TOTALS,
    TOTALS_AS_ROW,
    SECOND_DEVICE,
    SECOND_DEVICE_AS_ROW,
    OTHER_TABLE,
    COMMENTS,
    BLANK_LINES,
    TRUNCATED
  }
}
