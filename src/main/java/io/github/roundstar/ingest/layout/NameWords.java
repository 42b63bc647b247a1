package io.github.roundstar.ingest.layout;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the words in a column's name say: the axis, the kind of thing, the direction, the unit. */
final class NameWords {
  private static final Pattern UNIT =
      Pattern.compile(
          "[\\[(/_ ](arc ?sec(?:onds?)?|as|\"|px|pix(?:els?)?|ms|msec|milliseconds?|s|sec(?:onds?)?|min(?:utes?)?)[\\])]?$");
  private static final Set<String> PULSE =
      Set.of(
          "pulse",
          "push",
          "pushed",
          "nudge",
          "correction",
          "corr",
          "command",
          "sent",
          "duration",
          "length",
          "p");
  private static final Set<String> OFFSET =
      Set.of(
          "offset",
          "off",
          "error",
          "err",
          "star",
          "deviation",
          "dev",
          "residual",
          "distance",
          "d",
          "position",
          "displacement");
  private static final Set<String> SIGNAL = Set.of("snr", "signal", "s/n");
  private static final Set<String> FLUX =
      Set.of("flux", "brightness", "adu", "counts", "intensity", "light");
  private static final Set<String> EVENT =
      Set.of(
          "event", "state", "status", "what", "mark", "note", "flag", "quality", "remark",
          "comment", "result");
  private static final Set<String> TIME =
      Set.of(
          "time",
          "clock",
          "when",
          "utc",
          "elapsed",
          "jd",
          "mjd",
          "unix",
          "seconds",
          "minutes",
          "milliseconds",
          "t",
          "instant",
          "timestamp");

  /** Names of a column that are its unit too. */
  private static final Set<String> TIME_UNITS = Set.of("seconds", "minutes", "milliseconds");

  private final Set<String> words = new HashSet<>();
  private final String lower;

  NameWords(String name) {
    lower = name.toLowerCase(Locale.ROOT).replaceFirst("^[#!%*; ]+", "").strip();
    Matcher unit = UNIT.matcher(lower);
    String bare = name.replaceFirst("^[#!%*; ]+", "").strip();
    if (unit.find()) {
      bare = bare.substring(0, Math.min(bare.length(), unit.start()));
    }
    String spaced =
        bare.replaceFirst("^[#!%*; ]+", "")
            .strip()
            .replaceAll("^([dp])(?=RA|Ra|Dec|DEC|X|Y)", "$1 ")
            .replaceAll("([a-z])([A-Z])", "$1 $2")
            .toLowerCase(Locale.ROOT)
            .replaceFirst("^([dp])(ra|dec|x|y)(?![a-z])", "$1 $2");
    words.addAll(Arrays.asList(spaced.split("[^a-z/]+|(?<=[a-z])/(?=[a-z]{2})")));
    words.addAll(Arrays.asList(spaced.split("[^a-z]+")));
  }

  Optional<String> unit() {
    Matcher unit = UNIT.matcher(lower);
    if (unit.find()) {
      return unit(unit.group(1));
    }
    return TIME_UNITS.contains(lower) ? unit(lower) : Optional.empty();
  }

  /** The unit that a word means. */
  static Optional<String> unit(String word) {
    String text = word.toLowerCase(Locale.ROOT).replaceAll("[\\[\\]() ]", "");
    return switch (text) {
      case "arcsec", "arcsecond", "arcseconds", "as", "\"" -> Optional.of("arcsec");
      case "px", "pix", "pixel", "pixels" -> Optional.of("px");
      case "ms", "msec", "millisecond", "milliseconds" -> Optional.of("ms");
      case "s", "sec", "second", "seconds" -> Optional.of("s");
      case "min", "minute", "minutes" -> Optional.of("min");
      default -> Optional.empty();
    };
  }

  private boolean any(Set<String> known) {
    return words.stream().anyMatch(known::contains);
  }

  boolean has(String word) {
    return words.contains(word);
  }

  boolean isPulse() {
    return any(PULSE);
  }

  boolean isOffset() {
    return any(OFFSET);
  }

  boolean isSnr() {
    return any(SIGNAL);
  }

  boolean isFlux() {
    return any(FLUX);
  }

  boolean isEvent() {
    return any(EVENT);
  }

  boolean isTime() {
    return any(TIME);
  }

  boolean isRun() {
    return has("run") || has("session");
  }

  boolean isDither() {
    return has("dither") || has("shift");
  }

  /** The direction that the name points to. */
  Optional<Direction> direction() {
    for (Direction direction :
        List.of(Direction.EAST, Direction.WEST, Direction.NORTH, Direction.SOUTH)) {
      String word = direction.word();
      if (has(word) || has(word.substring(0, 1))) {
        return Optional.of(direction);
      }
    }
    return Optional.empty();
  }

  /** 'r' for right ascension, 'd' for declination, 'x', 'y', or ' ' for none. */
  char axis() {
    Optional<Direction> to = direction();
    if (to.isPresent()) {
      return to.get() == Direction.EAST || to.get() == Direction.WEST ? 'r' : 'd';
    }
    if (has("ra") || has("ascension") || has("ew")) {
      return 'r';
    }
    if (has("dec") || has("declination") || has("ns")) {
      return 'd';
    }
    if (has("x") || has("dx") || has("across")) {
      return 'x';
    }
    return has("y") || has("dy") || has("up") ? 'y' : ' ';
  }
}
