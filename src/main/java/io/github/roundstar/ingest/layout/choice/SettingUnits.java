package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Units of settings: as written beside the value or in its label, or as its size allows. */
final class SettingUnits {
  private static final Pattern PER_PIXEL =
      Pattern.compile(
          "^\\s*[\\[(]?([^0-9,;|]{1,24}?)\\s*(?:/|\\b(?:per|pro|je|par|por|al|a|ao|cada)\\b)\\s*(\\p{L}+)");

  private static final Pattern PER_PIXEL_IN_LABEL =
      Pattern.compile("(\\S+) ?(?:/|\\bper\\b) ?(\\p{L}+)");
  private static final Pattern MICRON =
      Pattern.compile(
          "^\\s*[\\[(]?(?:um|\u00b5m|\u03bcm|micron\\w*|mikro\\w*|micro\\w*)(?!\\p{L})");

  private final List<Decision> decisions;

  SettingUnits(List<Decision> decisions) {
    this.decisions = decisions;
  }

  private static final Pattern MILLIMETRES = Pattern.compile("^\\s*[\\[(]?mm(?!\\p{L})");

  /**
   * Arcseconds per pixel are the scale, micrometres the size of a pixel, and millimetres a focal
   * length, by any name.
   */
  static Optional<Setting> byUnit(String rest, String label) {
    Matcher per = PER_PIXEL.matcher(rest);
    if (label.isEmpty()) {
      return Optional.empty();
    }
    Matcher inLabel = PER_PIXEL_IN_LABEL.matcher(label.replace('_', ' '));
    if (inLabel.find()
        && Words.unit(inLabel.group(1)).filter("arcsec"::equals).isPresent()
        && Words.unit(inLabel.group(2)).filter("px"::equals).isPresent()) {
      return Optional.of(Setting.SCALE);
    }
    if (per.find()
        && Words.unit(per.group(1)).filter("arcsec"::equals).isPresent()
        && Words.unit(per.group(2)).filter("px"::equals).isPresent()) {
      return Optional.of(Setting.SCALE);
    }
    if (Words.of(label).has("other")) {
      return Optional.empty();
    }
    String unit = textAt(label, rest);
    return MICRON.matcher(unit).find()
        ? Optional.of(Setting.PIXEL_SIZE)
        : MILLIMETRES.matcher(unit).find() ? Optional.of(Setting.FOCAL_LENGTH) : Optional.empty();
  }

  /** The unit behind a value, or in the label. */
  static String textAt(String label, String rest) {
    Matcher behind = Pattern.compile("^\\s*[\"'\\[(]?([^\\s,;|\\[\\](){}\\t]+)").matcher(rest);
    String after =
        rest.startsWith("\t") || rest.startsWith(",") || rest.startsWith(";")
            ? ""
            : behind.find() ? behind.group(1) : "";
    Matcher within =
        Pattern.compile("(?:[\\[(]\\s*([^\\])]+)[\\])]|[_ ](\\p{L}+|%|\"))$")
            .matcher(label.replaceAll("(?<=\\p{L})\"$", "")); // a quoted key
    String inside =
        within.find() ? within.group(1) == null ? within.group(2) : within.group(1) : "";
    String twoWords = rest.strip().toLowerCase(Locale.ROOT);
    boolean arc =
        Words.of(twoWords.substring(0, Math.min(24, twoWords.length()))).has("unit arcsec");
    return (after.isEmpty() ? inside : arc && !after.contains("%") ? "arcsec " + after : after)
        .strip();
  }

  /** The unit as written; where none is, the size of the value must tell. */
  Optional<String> of(Setting setting, String text, double value, boolean parts) {
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
}
