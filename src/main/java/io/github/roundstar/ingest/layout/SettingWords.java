package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;

/** Finds settings in the lines that are no rows: an ordinary word, then a value. */
final class SettingWords {
  private static final Map<Setting, String> WORDS = new LinkedHashMap<>();
  private static final Set<Setting> ANGLES =
      Set.of(
          Setting.DECLINATION,
          Setting.HOUR_ANGLE,
          Setting.RIGHT_ASCENSION,
          Setting.LATITUDE,
          Setting.LONGITUDE);

  /** Not the end of another word, and no word right before: frame rate is no guide rate. */
  private static final String FREE = "(?<![a-z])(?<![a-z][ _])";

  private static final String OF_WHAT =
      "(?:(?:guide|guiding|image|pixel|plate|target|star|site)[ _])?";
  private static final String GAP = "(?![a-z])[^0-9+a-z-]{0,12}";

  /** Lines that speak of an axis, but not of where the star stands. */
  private static final String NOT_OF_LOOP =
      "^(?!.*(?:gain|deadband|limit|minim|maxim|pulse|offset|error|rms|backlash|drift|step)).*?";

  private static final String DATE = "[0-9]{1,4}[-./][0-9]{1,2}[-./][0-9]{2,4}";
  private static final String INSTANT =
      DATE
          + "[T ,]+[0-9]{1,2}:[0-9]{2}(?::[0-9]{2}(?:[.,][0-9]+)?)? ?(?:Z|[+-][0-9]{2}:?[0-9]{2})?";

  static {
    WORDS.put(Setting.SCALE, "scale|échelle");
    WORDS.put(Setting.BINNING, "binning");
    WORDS.put(Setting.FOCAL_LENGTH, "focal length");
    WORDS.put(Setting.PIXEL_SIZE, "pixel size");
    WORDS.put(Setting.DECLINATION, "declination|dec");
    WORDS.put(Setting.HOUR_ANGLE, "hour angle|ha");
    WORDS.put(Setting.RIGHT_ASCENSION, "right ascension|ra");
    WORDS.put(Setting.LATITUDE, "latitude");
    WORDS.put(Setting.LONGITUDE, "longitude");
    WORDS.put(Setting.GUIDE_RATE, "speed|rate");
    WORDS.put(Setting.EXPOSURE, "exposure");
  }

  private final boolean decimalComma;
  private final List<Decision> decisions;

  SettingWords(boolean decimalComma, List<Decision> decisions) {
    this.decimalComma = decimalComma;
    this.decisions = decisions;
  }

  /** Rules for what the lines tell. */
  List<SettingRule> rules(List<String> lines, TimeForm time) {
    List<SettingRule> rules = new ArrayList<>();
    WORDS.forEach((setting, words) -> rule(setting, words, lines).ifPresent(rules::add));
    pattern("(?i)(?:pier|tube)(?: side)?[^a-z]{1,4}(?<value>east|west)", lines)
        .ifPresent(p -> rules.add(told(Setting.PIER_SIDE, p, Optional.empty(), lines)));
    if (time.kind().isElapsed()) {
      pattern("(?<value>" + INSTANT + ")", lines)
          .ifPresent(p -> rules.add(told(Setting.START, p, Optional.empty(), lines)));
    } else if (time.kind() == TimeForm.Kind.CLOCK) {
      pattern("(?<![0-9])(?<value>" + DATE + ")", lines)
          .ifPresent(p -> rules.add(told(Setting.DATE, p, Optional.empty(), lines)));
    }
    return rules;
  }

  private Optional<SettingRule> rule(Setting setting, String words, List<String> lines) {
    String mark = decimalComma ? "," : "[.]";
    String number = "[+-]?[0-9]+(?:" + mark + "[0-9]+)?";
    if (ANGLES.contains(setting)) {
      number =
          "[+-]?[0-9]{1,3}(?:[:d°h][0-9]{1,2}(?:[:m'][0-9]{1,2}(?:[.,][0-9]+)?)?|"
              + mark
              + "[0-9]+)?";
    }
    String expression =
        "(?i)"
            + (ANGLES.contains(setting) ? NOT_OF_LOOP : "")
            + FREE
            + OF_WHAT
            + "(?:"
            + words
            + ")"
            + GAP
            + "(?<value>"
            + number
            + ")";
    Optional<LinePattern> pattern = pattern(expression, lines);
    if (pattern.isEmpty()) {
      return Optional.empty();
    }
    return unit(setting, pattern.get(), lines)
        .map(unit -> told(setting, pattern.get(), Optional.of(unit), lines));
  }

  private SettingRule told(
      Setting setting, LinePattern pattern, Optional<String> unit, List<String> lines) {
    Set<String> values = new HashSet<>();
    for (String line : lines) {
      pattern.find(line).flatMap(m -> LinePattern.group(m, "value")).ifPresent(values::add);
    }
    String some = values.size() == 1 ? values.iterator().next() : values.size() + " values";
    decisions.add(
        Decision.certain(
            setting.word(), some + unit.map(u -> " " + u).orElse(""), "a line with its name"));
    return new SettingRule(setting, Optional.of(pattern), Optional.empty(), unit);
  }

  private static Optional<LinePattern> pattern(String expression, List<String> lines) {
    LinePattern pattern = LinePattern.of(expression);
    return lines.stream().anyMatch(line -> pattern.find(line).isPresent())
        ? Optional.of(pattern)
        : Optional.empty();
  }

  /** The unit behind the value; where there is none, the size of the value must tell. */
  private Optional<String> unit(Setting setting, LinePattern pattern, List<String> lines) {
    double value = Double.NaN;
    String rest = "";
    boolean sexagesimal = false;
    for (String line : lines) {
      Optional<Matcher> found = pattern.find(line);
      if (found.isPresent()) {
        String text = LinePattern.group(found.get(), "value").orElse("");
        rest = line.substring(found.get().end()).strip().toLowerCase(Locale.ROOT);
        value = Sexagesimal.of(text, decimalComma).orElse(Double.NaN);
        sexagesimal = Numbers.of(text, decimalComma).isEmpty();
        break;
      }
    }
    return switch (setting) {
      case GUIDE_RATE -> guideRate(rest, value);
      case EXPOSURE -> exposure(rest, value);
      case HOUR_ANGLE, RIGHT_ASCENSION -> hours(setting, rest, value, sexagesimal);
      case SCALE -> plain(setting, rest, value, "arcsec|as\\b|\"");
      case FOCAL_LENGTH -> plain(setting, rest, value, "mm");
      case PIXEL_SIZE -> plain(setting, rest, value, "um|µm|μm|micron|micro");
      default -> Optional.of(setting.units().get(0));
    };
  }

  /** Hours where parts or a unit say so; a bare number may be degrees. */
  private Optional<String> hours(Setting setting, String rest, double value, boolean parts) {
    if (rest.startsWith("deg") || rest.startsWith("°")) {
      return Optional.of("deg");
    }
    return parts || rest.matches("h(?![a-z]).*|hours?.*")
        ? Optional.of("h")
        : asked(setting, value);
  }

  /** The setting's own unit, unless the word behind the value is another. */
  private Optional<String> plain(Setting setting, String rest, double value, String unit) {
    boolean other =
        !rest.isEmpty()
            && Character.isLetter(rest.charAt(0))
            && !rest.matches("(?:" + unit + ").*");
    return other ? asked(setting, value) : Optional.of(setting.units().get(0));
  }

  private Optional<String> guideRate(String rest, double value) {
    if (rest.startsWith("%") || rest.startsWith("percent")) {
      return Optional.of("percent");
    }
    if (rest.startsWith("arcsec") || rest.startsWith("\"/s")) {
      return Optional.of("arcsec/s");
    }
    if (rest.startsWith("x") || rest.startsWith("sidereal") || value <= 1) {
      return Optional.of("sidereal");
    }
    return asked(Setting.GUIDE_RATE, value);
  }

  private Optional<String> exposure(String rest, double value) {
    if (rest.startsWith("ms") || rest.startsWith("milli")) {
      return Optional.of("ms");
    }
    if (rest.startsWith("s") || value <= 30) {
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
}
