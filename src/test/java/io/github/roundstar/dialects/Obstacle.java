package io.github.roundstar.dialects;

import io.github.roundstar.dialects.Recipe.Angle;
import io.github.roundstar.dialects.Recipe.Around;
import io.github.roundstar.dialects.Recipe.Axes;
import io.github.roundstar.dialects.Recipe.Clock;
import io.github.roundstar.dialects.Recipe.Events;
import io.github.roundstar.dialects.Recipe.Extra;
import io.github.roundstar.dialects.Recipe.Form;
import io.github.roundstar.dialects.Recipe.Lead;
import io.github.roundstar.dialects.Recipe.Names;
import io.github.roundstar.dialects.Recipe.Pulses;
import io.github.roundstar.dialects.Recipe.RunMark;
import io.github.roundstar.dialects.Recipe.SettingsStyle;
import io.github.roundstar.dialects.Recipe.Source;
import io.github.roundstar.dialects.Recipe.Style;
import io.github.roundstar.dialects.Recipe.Told;
import io.github.roundstar.dialects.Recipe.UnitPlace;
import io.github.roundstar.dialects.Recipe.Zone;
import java.util.EnumSet;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Predicate;

/**
 * One thing that stands between the text of a log and its reader. Each can be put, alone, on a log
 * that otherwise reads well, or be one of many.
 *
 * <p>Those of {@link Aspect#OPEN} leave a fact open that only the user knows; all others leave the
 * log {@link DialectLog#answerable() answerable}.
 */
public enum Obstacle {
  // ------------------------------------------------------------------ words
  GERMAN(Aspect.TONGUE, r -> speak(r, Tongue.GERMAN)),
  FRENCH(Aspect.TONGUE, r -> speak(r, Tongue.FRENCH)),
  SPANISH(Aspect.TONGUE, r -> speak(r, Tongue.SPANISH)),
  ITALIAN(Aspect.TONGUE, r -> speak(r, Tongue.ITALIAN)),
  PORTUGUESE(Aspect.TONGUE, r -> speak(r, Tongue.PORTUGUESE)),
  DUTCH(Aspect.TONGUE, r -> speak(r, Tongue.DUTCH)),
  GREEK_LETTERS(Aspect.TONGUE, r -> speak(r, Tongue.GREEK)),
  ENGLISH_SYNONYMS(Aspect.TONGUE, r -> speak(r, Tongue.ENGLISH)),
  NO_ACCENTS(
      Aspect.ACCENTS,
      Obstacle::tongueFree,
      r -> {
        if (r.tongue == Tongue.ENGLISH) {
          r.tongue =
              r.pick(
                  Tongue.GERMAN, Tongue.FRENCH, Tongue.SPANISH, Tongue.ITALIAN, Tongue.PORTUGUESE);
          r.plainestWords = false;
        }
        r.accents = false;
      }),
  CAMEL_CASE(Aspect.STYLE, r -> r.style = Style.CAMEL),
  PASCAL_CASE(Aspect.STYLE, r -> r.style = Style.PASCAL),
  SPACED_NAMES(
      Aspect.STYLE,
      r -> {
        r.style = Style.SPACED;
        r.unitPlace = UnitPlace.SQUARE;
      }),
  UPPER_CASE(Aspect.STYLE, r -> r.style = Style.UPPER),
  KEBAB_CASE(Aspect.STYLE, r -> r.style = Style.KEBAB),
  DOTTED_NAMES(Aspect.STYLE, r -> r.style = Style.DOTTED),
  GLUED_NAMES(Aspect.STYLE, r -> r.style = Style.GLUED),
  CUT_NAMES(
      Aspect.STYLE,
      r -> {
        r.style = Style.CUT;
        r.unitPlace = UnitPlace.ROUND;
      }),

  // ------------------------------------------------------------------ lines to fields
  SEMICOLONS(Aspect.FORM, r -> r.form = Form.SEMICOLON),
  TABS(Aspect.FORM, r -> r.form = Form.TAB),
  SINGLE_BLANKS(Aspect.FORM, Obstacle::blanks),
  RUNS_OF_BLANKS(
      Aspect.FORM,
      r -> {
        blanks(r);
        r.form = Form.BLANK_RUNS;
      }),
  FIXED_WIDTH(Aspect.FORM, r -> r.form = Form.FIXED_WIDTH),
  PIPES(Aspect.FORM, r -> r.form = Form.PIPES),
  PIPE_FRAME(Aspect.FORM, r -> r.form = Form.PIPE_FRAME),
  COMMA_AND_BLANK(Aspect.FORM, r -> r.form = Form.COMMA_BLANK),
  ALL_QUOTED(Aspect.FORM, r -> r.quoteAll = true),
  TEXT_QUOTED(Aspect.FORM, r -> r.quoteText = true),
  KEY_EQUALS_VALUE(
      Aspect.FORM,
      r -> {
        blanks(r);
        r.form = Form.KEY_EQUALS_BLANK;
      }),
  KEY_EQUALS_VALUE_COMMA(Aspect.FORM, r -> r.form = Form.KEY_EQUALS_COMMA),
  KEY_COLON_VALUE(Aspect.FORM, r -> r.form = Form.KEY_COLON),
  JSON_LINES(Aspect.FORM, r -> r.form = Form.JSON),
  PROSE(
      Aspect.FORM,
      r -> r.tongue == Tongue.ENGLISH || r.tongue == Tongue.GERMAN || r.tongue == Tongue.FRENCH,
      r -> {
        r.form = Form.PROSE;
        r.lostRowsAbsent = true;
        r.extras.clear();
        r.style = Style.SNAKE;
        if (r.quantityFirst) {
          r.quantityFirst = false;
        }
      }),
  TYPE_LETTER(
      Aspect.LEAD,
      r -> r.form != Form.JSON && r.form != Form.PIPE_FRAME,
      r -> r.lead = Lead.TYPE_LETTER),
  LEVEL_WORD(
      Aspect.LEAD, r -> r.form != Form.JSON && r.form != Form.PIPE_FRAME, r -> r.lead = Lead.LEVEL),
  TIME_IN_BRACKETS(
      Aspect.LEAD,
      r -> r.form != Form.JSON && r.form != Form.PIPE_FRAME && !r.twoLines,
      r -> {
        r.lead = Lead.TIME_IN_BRACKETS;
        if (r.form == Form.COMMA && r.random.nextBoolean()) {
          r.form = Form.KEY_EQUALS_COMMA;
        }
      }),
  TWO_LINES_TO_A_FRAME(
      Aspect.LINES,
      r ->
          r.form != Form.JSON
              && r.form != Form.PROSE
              && r.form != Form.PIPE_FRAME
              && r.lead == Lead.NONE
              && !r.quoteText,
      r -> {
        r.twoLines = true;
        r.names = Names.ABOVE;
      }),
  TRAILING_DELIMITER(Aspect.LINES, r -> simpleDelimiter(r), r -> r.trailingDelimiter = true),
  INDENTED_ROWS(
      Aspect.LINES,
      r -> r.tabular() && r.lead == Lead.NONE && r.form != Form.TAB && r.form != Form.PIPE_FRAME,
      r -> r.leadingBlanks = true),

  // ------------------------------------------------------------------ where names stand
  NAMES_AFTER_HASH(Aspect.NAMES, Obstacle::freeNames, r -> commentedNames(r, "# ")),
  NAMES_AFTER_SEMICOLON(
      Aspect.NAMES, r -> freeNames(r) && r.form != Form.SEMICOLON, r -> commentedNames(r, "; ")),
  NAMES_AFTER_SLASHES(Aspect.NAMES, Obstacle::freeNames, r -> commentedNames(r, "// ")),
  NAMES_AFTER_EXCLAMATION(Aspect.NAMES, Obstacle::freeNames, r -> commentedNames(r, "! ")),
  NAMES_AFTER_PERCENT(Aspect.NAMES, Obstacle::freeNames, r -> commentedNames(r, "%")),
  NAMES_AFTER_DASHES(Aspect.NAMES, Obstacle::freeNames, r -> commentedNames(r, "-- ")),
  NAMES_LISTED(Aspect.NAMES, Obstacle::freeNames, r -> r.names = Names.LIST_IN_COMMENT),
  NAMES_ONE_PER_LINE(Aspect.NAMES, Obstacle::freeNames, r -> r.names = Names.ONE_PER_LINE),
  NAMES_IN_TWO_LINES(Aspect.NAMES, Obstacle::freeNames, r -> r.names = Names.TWO_LINES),
  NAMES_REPEATED(Aspect.NAMES, Obstacle::freeNames, r -> r.names = Names.REPEATED),
  NO_MARKER_BEFORE_COMMENTS(Aspect.NAMES, r -> r.form != Form.JSON, r -> r.marker = ""),
  NO_NAMES_BUT_SENTENCE(
      Aspect.NAMES,
      Obstacle::freeNames,
      r -> {
        r.names = Names.NONE;
        r.axesSentence = true;
        r.unitPlace = UnitPlace.COMMENT;
        if (r.zone == Zone.UTC_IN_NAME) {
          r.zone = Zone.UTC_IN_HEADER;
        }
      }),
  EAST_AND_NORTH_AS_NAMES(
      Aspect.AXES,
      r -> r.form != Form.PROSE && r.tongue != Tongue.GREEK && r.names != Names.NONE,
      r -> {
        r.offsetAxes = Axes.EAST_NORTH;
        r.offsetSignTold = Told.NOT;
        r.raSign = r.pick(1, 1, -1);
        r.decSign = r.pick(1, 1, -1);
      }),
  CAMERA_NAMES_FOR_OFFSETS(
      Aspect.AXES, r -> r.form != Form.PROSE && r.names != Names.NONE, r -> r.offsetAxes = Axes.XY),
  DELTA_BEFORE_AXIS(
      Aspect.AXES, r -> r.form != Form.PROSE && r.names != Names.NONE, r -> r.delta = true),
  QUANTITY_BEFORE_AXIS(
      Aspect.AXES, r -> r.form != Form.PROSE && r.names != Names.NONE, r -> r.quantityFirst = true),

  // ------------------------------------------------------------------ units
  UNIT_IN_SQUARE_BRACKETS(
      Aspect.UNIT_PLACE, Obstacle::freeUnits, r -> r.unitPlace = UnitPlace.SQUARE),
  UNIT_IN_ROUND_BRACKETS(
      Aspect.UNIT_PLACE, Obstacle::freeUnits, r -> r.unitPlace = UnitPlace.ROUND),
  UNIT_AFTER_SLASH(Aspect.UNIT_PLACE, Obstacle::freeUnits, r -> r.unitPlace = UnitPlace.SLASH),
  UNIT_IN_LINE_BELOW(
      Aspect.UNIT_PLACE,
      r ->
          freeUnits(r)
              && r.tabular()
              && !r.twoLines
              && r.names != Names.LIST_IN_COMMENT
              && r.names != Names.ONE_PER_LINE,
      r -> r.unitPlace = UnitPlace.LINE_BELOW),
  UNIT_IN_COMMENT(Aspect.UNIT_PLACE, Obstacle::freeUnits, r -> r.unitPlace = UnitPlace.COMMENT),
  UNIT_BEHIND_VALUE(
      Aspect.UNIT_PLACE,
      r -> freeUnits(r) && r.form != Form.JSON && !r.quoteAll,
      r -> r.unitPlace = UnitPlace.IN_VALUE),
  DOUBLE_QUOTE_AS_UNIT(Aspect.UNIT_MARK, Obstacle::marksFit, r -> mark(r, "\"")),
  DOUBLE_PRIME_AS_UNIT(
      Aspect.UNIT_MARK, r -> marksFit(r) && r.charset.equals("UTF-8"), r -> mark(r, "″")),
  UNIT_AS_WORD_OF_THE_TONGUE(
      Aspect.UNIT_MARK,
      r -> {
        if (r.tongue == Tongue.ENGLISH && r.plainestWords) {
          r.plainestWords = false;
        }
        r.arcsecMark = "local";
      }),
  PIXELS_AND_SCALE(Aspect.ANGLE, r -> r.angle = Angle.PIXEL),
  PIXELS_AND_FOCAL_LENGTH(
      Aspect.ANGLE,
      r -> {
        r.angle = Angle.PIXEL;
        r.scaleByFocalLength = true;
      }),
  PIXELS_AND_ARCSEC(
      Aspect.ANGLE,
      r ->
          r.form != Form.PROSE
              && r.names != Names.NONE
              && r.unitPlace != UnitPlace.COMMENT
              && !r.offsetLetters,
      r -> {
        r.angle = r.pick(Angle.PIXEL, Angle.ARCSEC);
        r.bothUnits = true;
        r.scaleTold = r.random.nextBoolean();
      }),
  MILLIARCSEC(Aspect.ANGLE, r -> r.angle = Angle.MILLIARCSEC),

  // ------------------------------------------------------------------ pulses
  PULSES_IN_SECONDS(Aspect.PULSE_UNIT, r -> r.pulseUnit = "s"),
  PULSES_IN_MICROSECONDS(
      Aspect.PULSE_UNIT, r -> r.pulseUnit = r.charset.equals("UTF-8") ? r.pick("us", "µs") : "us"),
  LETTER_BEHIND_PULSE(Aspect.PULSES, Obstacle::freePulses, r -> r.pulses = Pulses.LETTER_BEHIND),
  LETTER_BEHIND_PULSE_WITH_BLANK(
      Aspect.PULSES,
      r -> freePulses(r) && r.cellsMayHoldBlanks(),
      r -> r.pulses = Pulses.LETTER_BEHIND_BLANK),
  LETTER_BEFORE_PULSE(Aspect.PULSES, Obstacle::freePulses, r -> r.pulses = Pulses.LETTER_FRONT),
  LETTER_IN_NEXT_COLUMN(Aspect.PULSES, Obstacle::freePulses, r -> r.pulses = Pulses.LETTER_COLUMN),
  LETTER_IN_COLUMN_BEFORE(
      Aspect.PULSES, Obstacle::freePulses, r -> r.pulses = Pulses.LETTER_COLUMN_BEFORE),
  LOCAL_LETTERS(
      Aspect.PULSES,
      r -> freePulses(r) && tongueFree(r),
      r -> {
        if (r.tongue == Tongue.ENGLISH) {
          r.tongue =
              r.pick(
                  Tongue.GERMAN,
                  Tongue.FRENCH,
                  Tongue.SPANISH,
                  Tongue.ITALIAN,
                  Tongue.PORTUGUESE,
                  Tongue.DUTCH);
        }
        r.localLetters = true;
        r.pulses = r.pick(Pulses.LETTER_BEHIND, Pulses.LETTER_COLUMN, Pulses.LETTER_FRONT);
      }),
  LETTERS_UNEXPLAINED(
      Aspect.PULSES,
      Obstacle::freePulses,
      r -> {
        r.lettersExplained = false;
        r.pulseSignTold = r.pick(Told.NOT, Told.STAR);
        r.pulses = r.pick(Pulses.LETTER_BEHIND, Pulses.LETTER_COLUMN);
      }),
  DIRECTION_AS_WORD(Aspect.PULSES, Obstacle::freePulses, r -> r.pulses = Pulses.WORD_COLUMN),
  DIRECTION_AS_PLUS_MINUS(
      Aspect.PULSES, Obstacle::freePulses, r -> r.pulses = Pulses.PLUS_MINUS_COLUMN),
  DIRECTION_AS_ONE(Aspect.PULSES, Obstacle::freePulses, r -> r.pulses = Pulses.ONE_COLUMN),
  FOUR_PULSE_COLUMNS(Aspect.PULSES, Obstacle::freePulses, r -> r.pulses = Pulses.FOUR_COLUMNS),
  NO_PULSES(
      Aspect.PULSES,
      r -> r.form != Form.PROSE && !r.twoLines && r.names != Names.NONE && r.offsetAxes != Axes.XY,
      r -> r.pulses = Pulses.NONE),
  PULSE_SIGN_OF_MOUNT_TOLD(
      Aspect.PULSE_SIGN, r -> r.hasPulses() && !r.letters(), r -> pulseSigns(r, Told.MOUNT)),
  PULSE_SIGN_OF_STAR_TOLD(
      Aspect.PULSE_SIGN, r -> r.hasPulses() && !r.letters(), r -> pulseSigns(r, Told.STAR)),
  PULSE_SIGN_ONLY_IN_DATA(
      Aspect.PULSE_SIGN,
      r -> r.hasPulses() && !r.letters(),
      r -> {
        r.raPulseSign = -1;
        r.decPulseSign = -1;
      }),
  PULSE_SIGN_DIFFERS_BY_AXIS(
      Aspect.PULSE_SIGN, r -> r.hasPulses() && !r.letters(), r -> r.decPulseSign = -1),
  PULSE_IN_NEXT_ROW(Aspect.LAG, r -> r.hasPulses() && r.form != Form.PROSE, r -> r.nextRow = true),
  PULSE_IN_NEXT_ROW_TOLD(
      Aspect.LAG,
      r -> r.hasPulses() && r.form != Form.PROSE,
      r -> {
        r.nextRow = true;
        r.nextRowTold = true;
      }),

  // ------------------------------------------------------------------ signs of offsets
  WEST_POSITIVE(Aspect.OFFSET_SIGN, Obstacle::freeSigns, r -> r.raSign = -1),
  SOUTH_POSITIVE(Aspect.OFFSET_SIGN, Obstacle::freeSigns, r -> r.decSign = -1),
  WEST_AND_SOUTH_POSITIVE(
      Aspect.OFFSET_SIGN,
      Obstacle::freeSigns,
      r -> {
        r.raSign = -1;
        r.decSign = -1;
      }),
  MARK_MINUS_STAR(
      Aspect.OFFSET_SIGN,
      Obstacle::freeSigns,
      r -> {
        r.offsetSignTold = Told.MARK_MINUS_STAR;
        r.raSign = -1;
        r.decSign = -1;
      }),
  SIGNS_NOT_TOLD(
      Aspect.OFFSET_SIGN,
      Obstacle::freeSigns,
      r -> {
        r.offsetSignTold = Told.NOT;
        r.raSign = r.pick(1, -1);
        r.decSign = r.pick(1, -1);
      }),
  OFFSETS_WITH_LETTERS(
      Aspect.OFFSET_SIGN,
      r -> freeSigns(r) && r.form != Form.JSON && !r.bothUnits,
      r -> {
        r.offsetLetters = true;
        r.offsetSignTold = Told.NOT;
      }),

  // ------------------------------------------------------------------ clocks
  DATE_BLANK_TIME(
      Aspect.CLOCK,
      Obstacle::blankClock,
      r -> clock(r, Clock.ISO_BLANK, r.pick(Zone.Z, Zone.OFFSET, Zone.UTC_IN_HEADER))),
  ISO_WITH_OFFSET(Aspect.CLOCK, r -> clock(r, Clock.ISO, Zone.OFFSET)),
  COMPACT_ISO(Aspect.CLOCK, r -> clock(r, Clock.COMPACT, r.pick(Zone.Z, Zone.UTC_IN_HEADER))),
  UTC_IN_NAME(
      Aspect.CLOCK,
      r -> r.names != Names.NONE && r.lead != Lead.TIME_IN_BRACKETS && r.form != Form.PROSE,
      r -> clock(r, Clock.ISO, Zone.UTC_IN_NAME)),
  ZONE_AS_OFFSET_IN_HEADER(Aspect.CLOCK, r -> clock(r, Clock.ISO, Zone.OFFSET_IN_HEADER)),
  ZONE_AS_NAME_IN_HEADER(Aspect.CLOCK, r -> clock(r, Clock.ISO, Zone.NAME_IN_HEADER)),
  DATE_AND_TIME_APART(
      Aspect.CLOCK,
      r -> r.lead != Lead.TIME_IN_BRACKETS && r.form != Form.PROSE,
      r -> clock(r, Clock.DATE_AND_TIME, Zone.NAME_IN_HEADER)),
  TIME_OF_DAY_OVER_MIDNIGHT(
      Aspect.CLOCK,
      r -> {
        clock(r, Clock.TIME_ONLY, r.pick(Zone.NAME_IN_HEADER, Zone.UTC_IN_HEADER));
        r.dateInTitle = true;
      }),
  TIME_OF_DAY_WITHOUT_DATE(Aspect.CLOCK, r -> clock(r, Clock.TIME_ONLY, Zone.UNTOLD)),
  TWELVE_HOURS(
      Aspect.CLOCK, Obstacle::blankClock, r -> clock(r, Clock.TWELVE_HOURS, Zone.NAME_IN_HEADER)),
  TWELVE_HOURS_OVER_MIDNIGHT(
      Aspect.CLOCK,
      Obstacle::blankClock,
      r -> {
        clock(r, Clock.TWELVE_HOURS_TIME_ONLY, Zone.OFFSET_IN_HEADER);
        r.dateInTitle = true;
      }),
  DATE_WITH_SLASHES(
      Aspect.CLOCK, Obstacle::blankClock, r -> clock(r, Clock.SLASHES_TOLD, Zone.UTC_IN_HEADER)),
  DATE_WITH_DOTS(
      Aspect.CLOCK, Obstacle::blankClock, r -> clock(r, Clock.DOTS, Zone.NAME_IN_HEADER)),
  MONTH_AS_WORD(
      Aspect.CLOCK, Obstacle::blankClock, r -> clock(r, Clock.TEXT_MONTH, Zone.UTC_IN_HEADER)),
  UNIX_SECONDS(Aspect.CLOCK, r -> clock(r, Clock.UNIX_SECONDS, Zone.Z)),
  UNIX_MILLISECONDS(Aspect.CLOCK, r -> clock(r, Clock.UNIX_MILLIS, Zone.Z)),
  JULIAN_DATE(Aspect.CLOCK, r -> clock(r, Clock.JULIAN, Zone.Z)),
  MODIFIED_JULIAN_DATE(
      Aspect.CLOCK, Obstacle::unitsNamed, r -> clock(r, Clock.MODIFIED_JULIAN, Zone.Z)),
  ELAPSED_SECONDS(Aspect.CLOCK, r -> elapsed(r, Clock.ELAPSED_SECONDS)),
  ELAPSED_RESTARTING(
      Aspect.CLOCK,
      r -> r.form != Form.JSON,
      r -> {
        elapsed(r, Clock.ELAPSED_RESTART);
        r.runs = 3;
        r.runMark = RunMark.LINE;
      }),
  ELAPSED_MILLISECONDS(Aspect.CLOCK, Obstacle::unitsNamed, r -> elapsed(r, Clock.ELAPSED_MILLIS)),
  ELAPSED_MINUTES(Aspect.CLOCK, Obstacle::unitsNamed, r -> elapsed(r, Clock.ELAPSED_MINUTES)),
  ELAPSED_HOURS_MINUTES_SECONDS(Aspect.CLOCK, r -> elapsed(r, Clock.ELAPSED_HMS)),
  FRAME_NUMBERS_AND_CADENCE(
      Aspect.CLOCK,
      r -> r.lead != Lead.TIME_IN_BRACKETS && r.form != Form.PROSE,
      r -> {
        elapsed(r, Clock.FRAMES_AND_CADENCE);
        r.extras.remove(Extra.COUNTER);
      }),
  CLOCK_ZONE_NOT_TOLD(Aspect.CLOCK, r -> clock(r, Clock.ISO, Zone.UNTOLD)),
  DATE_ORDER_NOT_TOLD(
      Aspect.CLOCK, Obstacle::blankClock, r -> clock(r, Clock.SLASHES_UNTOLD, Zone.UTC_IN_HEADER)),
  WHOLE_SECONDS(Aspect.CLOCK_STEP, r -> r.clockDecimals = 0),
  TENTHS_OF_SECONDS(Aspect.CLOCK_STEP, r -> r.clockDecimals = 1),

  // ------------------------------------------------------------------ digits
  DECIMAL_COMMA(
      Aspect.DIGITS,
      r -> r.form != Form.JSON && r.form != Form.KEY_EQUALS_COMMA && r.form != Form.COMMA_BLANK,
      r -> {
        r.decimalComma = true;
        if (r.form == Form.COMMA) {
          if (r.quoteAll || r.quoteText) {
            r.quoteAll = true;
          } else {
            r.form = Form.SEMICOLON;
          }
        }
      }),
  DECIMAL_COMMA_IN_QUOTES(
      Aspect.DIGITS,
      r -> r.form == Form.COMMA,
      r -> {
        r.decimalComma = true;
        r.quoteAll = true;
        r.quoteText = false;
      }),
  DECIMAL_COMMA_BETWEEN_COMMAS(
      Aspect.DIGITS,
      r -> r.form == Form.COMMA && !r.quoteAll && !r.quoteText,
      r -> {
        r.decimalComma = true;
        r.form = Form.COMMA_BLANK;
      }),
  MINUS_SIGN_OF_UNICODE(
      Aspect.DIGITS,
      r -> r.form != Form.JSON && r.charset.equals("UTF-8"),
      r -> r.minus = "\u2212"),
  PLUS_SIGNS(Aspect.DIGITS, r -> r.form != Form.JSON, r -> r.plus = true),
  NO_LEADING_ZERO(
      Aspect.DIGITS, r -> r.form != Form.JSON && r.form != Form.PROSE, r -> r.noLeadingZero = true),
  SCIENTIFIC_DIGITS(Aspect.DIGITS, r -> r.form != Form.PROSE, r -> r.scientific = true),
  TWO_DECIMALS(Aspect.DIGITS, r -> r.decimals = 2),
  NINE_DECIMALS(Aspect.DIGITS, r -> r.decimals = 9),
  GROUPED_THOUSANDS(
      Aspect.DIGITS,
      r -> r.form != Form.JSON && r.form != Form.PROSE,
      r -> {
        r.thousands = true;
        r.extras.add(Extra.FLUX);
      }),

  // ------------------------------------------------------------------ missing values
  MISSING_DASH(Aspect.MISSING, Obstacle::freeMissing, r -> r.missing = "-"),
  MISSING_DASHES(Aspect.MISSING, Obstacle::freeMissing, r -> r.missing = "--"),
  MISSING_NAN(
      Aspect.MISSING,
      Obstacle::freeMissing,
      r -> r.missing = r.form == Form.JSON ? "NaN" : r.pick("nan", "NaN", "NAN")),
  MISSING_NULL(Aspect.MISSING, Obstacle::freeMissing, r -> r.missing = "null"),
  MISSING_NOT_AVAILABLE(
      Aspect.MISSING, Obstacle::freeMissing, r -> r.missing = r.pick("n/a", "N/A")),
  MISSING_STAR(Aspect.MISSING, Obstacle::freeMissing, r -> r.missing = r.pick("*", "***")),
  MISSING_QUESTION_MARK(Aspect.MISSING, Obstacle::freeMissing, r -> r.missing = "?"),
  SENTINEL_TOLD(
      Aspect.MISSING,
      Obstacle::freeMissing,
      r -> {
        r.missing = r.pick("999.999", "-99.99", "9999.0");
        r.missingExplained = true;
      }),
  SENTINEL_ALONE(
      Aspect.MISSING,
      r -> freeMissing(r) && r.angle != Angle.MILLIARCSEC,
      r -> r.missing = r.pick("999.999", "-999.99")),
  LOST_FRAMES_LEFT_OUT(Aspect.MISSING, Obstacle::freeMissing, r -> r.lostRowsAbsent = true),

  // ------------------------------------------------------------------ settings
  SETTINGS_WITH_EQUALS(Aspect.SETTINGS, r -> r.settings = SettingsStyle.EQUALS),
  SETTING_IN_NEXT_FIELD(Aspect.SETTINGS, r -> r.settings = SettingsStyle.NEXT_FIELD),
  SETTINGS_IN_ONE_LINE(Aspect.SETTINGS, r -> r.settings = SettingsStyle.ONE_LINE),
  SETTING_UNIT_IN_KEY(Aspect.SETTINGS, r -> r.settings = SettingsStyle.UNIT_IN_KEY),
  SETTINGS_AS_SENTENCES(Aspect.SETTINGS, r -> r.settings = SettingsStyle.SENTENCES),
  SETTINGS_SECTION(
      Aspect.SETTINGS, r -> r.lead == Lead.NONE, r -> r.settings = SettingsStyle.SECTION),
  SETTINGS_WITH_DOTTED_LEADERS(Aspect.SETTINGS, r -> r.settings = SettingsStyle.DOTTED_LEADERS),
  GAIN_TOLD(Aspect.SETTINGS, r -> r.gainTold = true),
  FEW_SETTINGS(
      Aspect.SETTINGS,
      r -> {
        r.declinationTold = false;
        r.rateTold = false;
        r.pierTold = false;
      }),

  // ------------------------------------------------------------------ events and runs
  EVENT_LINES(Aspect.EVENTS, r -> r.events = Events.LINES),
  EVENTS_IN_COMMENTS(
      Aspect.EVENTS,
      r -> r.form != Form.JSON && r.lead == Lead.NONE,
      r -> r.events = Events.LINES_IN_COMMENT),
  EVENT_LINES_WITH_TIME(
      Aspect.EVENTS, r -> r.lead != Lead.TIME_IN_BRACKETS, r -> r.events = Events.LINES_WITH_TIME),
  EVENT_LINES_WITH_STARS(
      Aspect.EVENTS, r -> r.form != Form.JSON, r -> r.events = Events.LINES_WITH_STARS),
  DITHER_LINES_WITHOUT_SETTLING(
      Aspect.EVENTS,
      r -> {
        r.events = Events.LINES;
        r.settlingTold = false;
      }),
  FLAGS_AS_WORDS(Aspect.EVENTS, Obstacle::freeFlags, r -> r.events = Events.FLAG_WORDS),
  FLAGS_AS_CODES(Aspect.EVENTS, Obstacle::freeFlags, r -> r.events = Events.FLAG_CODES),
  FLAGS_AS_LETTERS(Aspect.EVENTS, Obstacle::freeFlags, r -> r.events = Events.FLAG_LETTERS),
  NOTE_COLUMN(Aspect.EVENTS, Obstacle::freeFlags, r -> r.events = Events.NOTE_COLUMN),
  FLAG_COLUMNS(
      Aspect.EVENTS,
      r -> freeFlags(r) && r.names != Names.NONE,
      r -> r.events = Events.ONE_ZERO_COLUMNS),
  ZEROS_WHILE_LOST(
      Aspect.EVENTS,
      r -> freeFlags(r) && !r.offsetLetters && !r.lostRowsAbsent && r.source == Source.OFFSETS,
      r -> {
        r.events = r.pick(Events.FLAG_WORDS, Events.FLAG_CODES);
        r.zerosWhileLost = true;
      }),
  RUNS_BY_LINE(Aspect.RUNS, r -> moreRuns(r), r -> runs(r, RunMark.LINE)),
  RUNS_BY_COLUMN(
      Aspect.RUNS,
      r -> moreRuns(r) && r.form != Form.PROSE && r.names != Names.NONE,
      r -> runs(r, RunMark.COLUMN)),
  RUNS_WITH_NAMES_AGAIN(
      Aspect.RUNS,
      r -> moreRuns(r) && r.tabular() && r.names != Names.NONE,
      r -> runs(r, RunMark.NAMES_AGAIN)),
  MERIDIAN_FLIP(
      Aspect.RUNS,
      r -> moreRuns(r),
      r -> {
        runs(r, RunMark.LINE);
        r.runs = 2;
        r.flip = true;
      }),

  // ------------------------------------------------------------------ look-alikes
  SIGNAL_COLUMNS(
      Aspect.EXTRAS,
      Obstacle::freeExtras,
      r -> {
        r.extras.add(Extra.FLUX);
        r.extras.add(Extra.PEAK);
        r.extras.add(Extra.FWHM);
      }),
  RUNNING_RMS(Aspect.EXTRAS, Obstacle::namedExtras, r -> r.extras.add(Extra.RUNNING_RMS)),
  RUNNING_MEAN(Aspect.EXTRAS, Obstacle::namedExtras, r -> r.extras.add(Extra.RUNNING_MEAN)),
  RUNNING_SUM(
      Aspect.EXTRAS, r -> namedExtras(r) && r.hasPulses(), r -> r.extras.add(Extra.RUNNING_SUM)),
  SMOOTHED_OFFSETS(Aspect.EXTRAS, Obstacle::namedExtras, r -> r.extras.add(Extra.SMOOTHED)),
  TOTAL_DISTANCE(Aspect.EXTRAS, Obstacle::freeExtras, r -> r.extras.add(Extra.TOTAL_DISTANCE)),
  PULSE_IN_TWO_UNITS(
      Aspect.EXTRAS,
      r -> namedExtras(r) && r.hasPulses() && !r.letters(),
      r -> r.extras.add(Extra.PULSE_COPY)),
  PULSE_ALSO_AS_ANGLE(
      Aspect.EXTRAS,
      r -> namedExtras(r) && r.hasPulses() && !r.letters(),
      r -> r.extras.add(Extra.PULSE_COPY_ANGLE)),
  STAR_PLACES(Aspect.EXTRAS, Obstacle::namedExtras, r -> r.extras.add(Extra.PLACES)),
  STAR_PLACES_AND_MARK(
      Aspect.EXTRAS, Obstacle::namedExtras, r -> r.extras.add(Extra.PLACES_AND_MARK)),
  RAW_CAMERA_OFFSETS(
      Aspect.EXTRAS,
      r -> namedExtras(r) && r.offsetAxes != Axes.XY,
      r -> r.extras.add(Extra.CAMERA_RAW)),
  OTHER_STAR(
      Aspect.EXTRAS,
      r -> namedExtras(r) && r.hasPulses() && !r.offsetLetters,
      r -> r.extras.add(Extra.OTHER_STAR)),
  TEMPERATURE(Aspect.EXTRAS, Obstacle::freeExtras, r -> r.extras.add(Extra.TEMPERATURE)),
  FRAME_COUNTER(
      Aspect.EXTRAS,
      r -> freeExtras(r) && r.clock != Clock.FRAMES_AND_CADENCE,
      r -> r.extras.add(Extra.COUNTER)),
  ELAPSED_BESIDE_CLOCK(
      Aspect.EXTRAS, r -> freeExtras(r) && !r.clock.elapsed, r -> r.extras.add(Extra.ELAPSED_TOO)),
  CONSTANT_AND_TEXT_COLUMNS(
      Aspect.EXTRAS,
      Obstacle::freeExtras,
      r -> {
        r.extras.add(Extra.CONSTANT);
        r.extras.add(Extra.TEXT);
        r.extras.add(Extra.EMPTY);
      }),
  MANY_LOOK_ALIKES(
      Aspect.EXTRAS,
      r -> namedExtras(r) && r.hasPulses() && !r.letters() && r.offsetAxes != Axes.XY,
      r -> {
        for (Extra extra :
            new Extra[] {
              Extra.RUNNING_RMS,
              Extra.SMOOTHED,
              Extra.TOTAL_DISTANCE,
              Extra.PULSE_COPY,
              Extra.PLACES_AND_MARK,
              Extra.FLUX,
              Extra.CAMERA_RAW
            }) {
          r.extras.add(extra);
        }
      }),
  NO_EXTRA_COLUMNS(Aspect.EXTRAS, Obstacle::freeExtras, r -> r.extras.clear()),
  COLUMNS_SHUFFLED(
      Aspect.ORDER,
      r -> r.names != Names.NONE && r.form != Form.PROSE && !r.twoLines,
      r -> r.shuffled = true),
  TIME_LAST(
      Aspect.ORDER,
      r -> r.form != Form.PROSE && !r.twoLines && r.lead != Lead.TIME_IN_BRACKETS,
      r -> r.timeLast = true),
  COLUMNS_SWAP_HALF_WAY(
      Aspect.ORDER,
      r ->
          r.tabular()
              && (r.names == Names.ABOVE || r.names == Names.IN_COMMENT)
              && !r.twoLines
              && r.lead != Lead.TIME_IN_BRACKETS
              && !r.quoteText
              && !r.around.contains(Around.TOTALS_AS_ROW),
      r -> r.swapHalfWay = true),
  PLACES_AND_MARK_ONLY(
      Aspect.SOURCE,
      Obstacle::freeSource,
      r -> {
        r.source = Source.PLACES_AND_MARK;
        r.angle = Angle.PIXEL;
      }),
  CAMERA_TURNED_BY_TOLD_ANGLE(
      Aspect.SOURCE,
      r -> freeSource(r) && r.hasPulses(),
      r -> {
        r.source = Source.CAMERA_TOLD;
        r.offsetAxes = Axes.XY;
        r.angle = Angle.PIXEL;
      }),

  // ------------------------------------------------------------------ around the frames
  TITLE_BLOCK(Aspect.AROUND, r -> r.form != Form.JSON, r -> r.around.add(Around.TITLE)),
  SECTIONS(Aspect.AROUND, r -> r.form != Form.JSON, r -> r.around.add(Around.SECTIONS)),
  TOTALS_AT_END(Aspect.AROUND, r -> r.form != Form.JSON, r -> r.around.add(Around.TOTALS)),
  TOTALS_AS_ROWS(
      Aspect.AROUND,
      r ->
          r.tabular()
              && r.lead == Lead.NONE
              && !r.twoLines
              && !r.swapHalfWay
              && !r.shuffled
              && !r.timeLast
              && r.source == Source.OFFSETS,
      r -> r.around.add(Around.TOTALS_AS_ROW)),
  SECOND_DEVICE(
      Aspect.AROUND,
      r -> r.form != Form.JSON && r.form != Form.PIPE_FRAME,
      r -> r.around.add(Around.SECOND_DEVICE)),
  SECOND_DEVICE_AS_ROWS(
      Aspect.AROUND,
      r -> r.tabular() && r.form != Form.PIPE_FRAME && r.form != Form.FIXED_WIDTH,
      r -> r.around.add(Around.SECOND_DEVICE_AS_ROW)),
  OTHER_TABLE_BEFORE(
      Aspect.AROUND,
      r -> r.tabular() && r.lead == Lead.NONE,
      r -> r.around.add(Around.OTHER_TABLE)),
  REMARKS_BETWEEN(Aspect.AROUND, r -> r.form != Form.JSON, r -> r.around.add(Around.COMMENTS)),
  BLANK_LINES_BETWEEN(Aspect.AROUND, r -> r.around.add(Around.BLANK_LINES)),
  LAST_LINE_CUT_OFF(
      Aspect.AROUND,
      r ->
          !r.twoLines
              && !r.quoteAll
              && !r.quoteText
              && r.events == Events.NONE
              && r.runs == 1
              && r.around.isEmpty()
              && r.form != Form.PIPE_FRAME,
      r -> r.around.add(Around.TRUNCATED)),

  // ------------------------------------------------------------------ bytes
  BYTE_ORDER_MARK(Aspect.BYTES, r -> r.byteOrderMark = true),
  UTF_16_LITTLE_ENDIAN(
      Aspect.BYTES,
      r -> {
        r.charset = "UTF-16LE";
        r.byteOrderMark = true;
      }),
  UTF_16_BIG_ENDIAN(
      Aspect.BYTES,
      r -> {
        r.charset = "UTF-16BE";
        r.byteOrderMark = true;
      }),
  LATIN_1(
      Aspect.BYTES,
      r -> tongueFree(r) && r.minus.equals("-") && !r.arcsecMark.equals("″"),
      r -> {
        if (r.tongue == Tongue.ENGLISH) {
          r.tongue =
              r.form == Form.PROSE
                  ? r.pick(Tongue.GERMAN, Tongue.FRENCH)
                  : r.pick(Tongue.GERMAN, Tongue.FRENCH, Tongue.SPANISH, Tongue.PORTUGUESE);
        }
        r.charset = "ISO-8859-1";
        r.around.add(Around.TITLE);
      }),
  CARRIAGE_RETURNS(Aspect.LINE_END, r -> r.lineEnd = "\r\n"),
  NO_LAST_LINE_END(
      Aspect.LINE_END, r -> !r.around.contains(Around.TRUNCATED), r -> r.noFinalLineEnd = true),

  // ------------------------------------------------------------------ one fact open
  OPEN_AXES(
      Aspect.OPEN,
      r -> plainTable(r) && !r.letters() && !r.offsetLetters,
      r -> {
        r.offsetAxes = r.pick(Axes.XY, Axes.NUMBERS);
        r.pulseAxes = r.offsetAxes;
        r.offsetSignTold = Told.NOT;
        r.pulseSignTold = Told.NOT;
        r.worm = false;
        r.declinationTold = false;
        r.rateTold = false;
      }),
  OPEN_AXES_WITHOUT_NAMES(
      Aspect.OPEN,
      r ->
          plainTable(r)
              && r.unitPlace == UnitPlace.IN_NAME
              && r.form != Form.KEY_COLON
              && r.tabular()
              && !r.letters()
              && !r.offsetLetters
              && r.hasPulses()
              && r.zone != Zone.UTC_IN_NAME
              && !r.twoLines,
      r -> {
        r.names = Names.NONE;
        r.unitPlace = UnitPlace.COMMENT;
        r.offsetSignTold = Told.NOT;
        r.pulseSignTold = Told.NOT;
        r.worm = false;
        r.declinationTold = false;
        r.rateTold = false;
      }),
  OPEN_UNIT(
      Aspect.OPEN,
      r -> plainTable(r) && r.unitPlace == UnitPlace.IN_NAME,
      r -> {
        r.unitPlace = UnitPlace.NONE;
        r.angle = r.pick(Angle.ARCSEC, Angle.PIXEL);
        r.scaleTold = true;
        r.declinationTold = false;
        r.rateTold = false;
      }),
  OPEN_SCALE(
      Aspect.OPEN,
      r -> plainTable(r),
      r -> {
        r.angle = Angle.PIXEL;
        r.scaleTold = false;
        r.rateTold = false;
        r.declinationTold = false;
      }),
  OPEN_PULSE_DIRECTION(
      Aspect.OPEN,
      r -> plainTable(r) && r.pulses == Pulses.SIGNED,
      r -> {
        r.pulses = Pulses.UNSIGNED;
        r.pulseSignTold = Told.NOT;
      }),
  OPEN_CADENCE(
      Aspect.OPEN,
      r -> plainTable(r) && r.clock == Clock.ISO && r.lead != Lead.TIME_IN_BRACKETS,
      r -> {
        elapsed(r, Clock.FRAMES_ONLY);
        r.extras.remove(Extra.COUNTER);
        r.rateTold = false;
      }),
  OPEN_CAMERA_ANGLE(
      Aspect.OPEN,
      r -> plainTable(r) && r.hasPulses() && !r.offsetLetters,
      r -> {
        r.source = Source.CAMERA_UNTOLD;
        r.offsetAxes = Axes.XY;
        r.angle = Angle.PIXEL;
        r.offsetSignTold = Told.NOT;
      }),
  OPEN_PAIR_OF_OFFSETS(
      Aspect.OPEN,
      r -> plainTable(r) && r.pulses == Pulses.SIGNED && !r.offsetLetters,
      r -> {
        r.source = Source.TWO_STARS;
        r.pulses = Pulses.NONE;
      }),
  OPEN_SET_POINT(
      Aspect.OPEN,
      r -> plainTable(r) && !r.offsetLetters,
      r -> {
        r.source = Source.PLACES_ONLY;
        r.angle = Angle.PIXEL;
        r.events = Events.NONE;
      });

  private final Aspect aspect;
  private final Predicate<Recipe> fits;
  private final Consumer<Recipe> change;

  Obstacle(Aspect aspect, Consumer<Recipe> change) {
    this(aspect, r -> true, change);
  }

  Obstacle(Aspect aspect, Predicate<Recipe> fits, Consumer<Recipe> change) {
    this.aspect = aspect;
    this.fits = fits;
    this.change = change;
  }

  /** What side of a log it changes; a log carries at most one obstacle of each. */
  public Aspect aspect() {
    return aspect;
  }

  /** This obstacle alone, on a log that otherwise reads well. */
  public DialectLog alone(long seed) {
    Recipe recipe = new Recipe(new Random(seed * 1_000_003 + ordinal()));
    recipe.worm = true;
    applyTo(recipe);
    return new Scribe(recipe)
        .write(
            seed,
            "alone-"
                + name().toLowerCase(java.util.Locale.ROOT).replace('_', '-')
                + "-"
                + seed
                + ".log");
  }

  boolean fits(Recipe recipe) {
    return fits.test(recipe);
  }

  void applyTo(Recipe recipe) {
    change.accept(recipe);
    recipe.obstacles.add(this);
  }

  /** A side of a log. */
  public enum Aspect {
    TONGUE,
    ACCENTS,
    STYLE,
    FORM,
    LEAD,
    LINES,
    NAMES,
    AXES,
    UNIT_PLACE,
    UNIT_MARK,
    OFFSET_SIGN,
    ANGLE,
    SOURCE,
    PULSE_UNIT,
    PULSES,
    PULSE_SIGN,
    LAG,
    CLOCK,
    CLOCK_STEP,
    DIGITS,
    MISSING,
    SETTINGS,
    EVENTS,
    RUNS,
    EXTRAS,
    ORDER,
    AROUND,
    BYTES,
    LINE_END,
    /** One fact that text and numbers do not tell. */
    OPEN
  }

  /** Look-alikes from which a sharp reader could not work out an open fact. */
  private static final Set<Extra> TELL_NOTHING =
      EnumSet.of(
          Extra.SNR,
          Extra.FLUX,
          Extra.PEAK,
          Extra.FWHM,
          Extra.TEMPERATURE,
          Extra.COUNTER,
          Extra.CONSTANT,
          Extra.TEXT,
          Extra.EMPTY);

  // ------------------------------------------------------------------ what goes with what

  private static void speak(Recipe r, Tongue tongue) {
    r.tongue = tongue;
    r.plainestWords = false;
  }

  /** Whether the tongue may still be another than English. */
  private static boolean tongueFree(Recipe r) {
    return r.tongue != Tongue.GREEK && !r.obstacles.contains(ENGLISH_SYNONYMS);
  }

  private static void blanks(Recipe r) {
    r.form = Form.BLANK;
    if (r.style == Style.SPACED) {
      r.style = Style.SNAKE;
    }
  }

  private static boolean simpleDelimiter(Recipe r) {
    return r.form == Form.COMMA
        || r.form == Form.SEMICOLON
        || r.form == Form.TAB
        || r.form == Form.PIPES;
  }

  private static boolean freeNames(Recipe r) {
    return r.tabular() && !r.twoLines;
  }

  private static void commentedNames(Recipe r, String marker) {
    r.names = Names.IN_COMMENT;
    r.marker = marker;
  }

  private static boolean freeUnits(Recipe r) {
    return r.form != Form.PROSE && r.names != Names.NONE;
  }

  /** Marks of inches cannot be part of a name that is one word. */
  private static boolean marksFit(Recipe r) {
    return r.form != Form.JSON && !r.quoteAll && r.form != Form.KEY_EQUALS_BLANK;
  }

  private static void mark(Recipe r, String mark) {
    r.arcsecMark = mark;
    if (r.unitPlace == UnitPlace.IN_NAME) {
      r.unitPlace = r.pick(UnitPlace.SQUARE, UnitPlace.ROUND);
    }
  }

  private static boolean freePulses(Recipe r) {
    return r.form != Form.PROSE;
  }

  private static void pulseSigns(Recipe r, Told told) {
    r.pulseSignTold = told;
    r.raPulseSign = r.pick(1, -1);
    r.decPulseSign = r.pick(1, -1);
  }

  private static boolean freeSigns(Recipe r) {
    return r.form != Form.PROSE && r.offsetAxes != Axes.EAST_NORTH;
  }

  private static void clock(Recipe r, Clock clock, Zone zone) {
    r.clock = clock;
    r.zone = zone;
  }

  private static boolean blankClock(Recipe r) {
    return r.cellsMayHoldBlanks();
  }

  private static void elapsed(Recipe r, Clock clock) {
    clock(r, clock, r.pick(Zone.UTC_IN_HEADER, Zone.OFFSET, Zone.NAME_IN_HEADER));
    r.dateInTitle = true;
  }

  /** Whether the unit of the time column will be told somewhere. */
  private static boolean unitsNamed(Recipe r) {
    return r.names != Names.NONE
        && r.lead != Lead.TIME_IN_BRACKETS
        && r.form != Form.PROSE
        && (r.unitPlace == UnitPlace.IN_NAME
            || r.unitPlace == UnitPlace.SQUARE
            || r.unitPlace == UnitPlace.ROUND
            || r.unitPlace == UnitPlace.SLASH
            || r.unitPlace == UnitPlace.LINE_BELOW);
  }

  private static boolean freeMissing(Recipe r) {
    return r.form != Form.PROSE;
  }

  private static boolean freeFlags(Recipe r) {
    return r.form != Form.PROSE && r.cellsMayHoldBlanks();
  }

  private static boolean moreRuns(Recipe r) {
    return r.runs == 1 && r.clock != Clock.FRAMES_AND_CADENCE && r.clock != Clock.FRAMES_ONLY;
  }

  private static void runs(Recipe r, RunMark mark) {
    r.runs = r.pick(2, 3);
    r.runMark = mark;
  }

  private static boolean freeExtras(Recipe r) {
    return r.form != Form.PROSE;
  }

  private static boolean namedExtras(Recipe r) {
    return r.form != Form.PROSE && r.names != Names.NONE && r.source == Source.OFFSETS;
  }

  private static boolean freeSource(Recipe r) {
    return r.form != Form.PROSE
        && r.names != Names.NONE
        && !r.offsetLetters
        && !r.bothUnits
        && r.offsetAxes == Axes.RA_DEC
        && r.angle != Angle.MILLIARCSEC
        && !r.delta
        && r.offsetSignTold == Told.STAR_MINUS_MARK
        && r.unitPlace != UnitPlace.COMMENT;
  }

  /** A log in which nothing else tells what is to be left open. */
  private static boolean plainTable(Recipe r) {
    return r.form != Form.PROSE
        && r.names == Names.ABOVE
        && !r.axesSentence
        && r.offsetAxes == Axes.RA_DEC
        && r.angle == Angle.ARCSEC
        && !r.bothUnits
        && r.unitPlace != UnitPlace.IN_VALUE
        && r.source == Source.OFFSETS
        && r.runs == 1
        && !r.zerosWhileLost
        && !r.around.contains(Around.TOTALS)
        && !r.around.contains(Around.TOTALS_AS_ROW)
        && TELL_NOTHING.containsAll(r.extras);
  }
}
