package io.github.roundstar.ingest;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Right ascension and declination as headers write them: {@code 05 34 32.0} or decimal degrees. */
final class SkyAngle {
  private static final Pattern SEXAGESIMAL =
      Pattern.compile("([+-]?)(\\d{1,3})[ :hd]+(\\d{1,2})[ :m']+(\\d{1,2}(?:\\.\\d*)?)[s\"]?");

  private SkyAngle() {}

  /** Declination [deg]; nothing when it is not one. */
  static OptionalDouble degrees(Optional<String> text) {
    OptionalDouble value = text.map(t -> value(t, 1)).orElse(OptionalDouble.empty());
    return value.stream().filter(v -> Math.abs(v) <= 90).findFirst();
  }

  /** Right ascension [h]: sexagesimal is in hours, a plain number in degrees. */
  static OptionalDouble hours(Optional<String> text) {
    OptionalDouble value = text.map(t -> value(t, 15)).orElse(OptionalDouble.empty());
    return value.stream().map(v -> v / 15).filter(v -> v >= 0 && v < 24).findFirst();
  }

  private static OptionalDouble value(String text, double degreesPerUnit) {
    Matcher parts = SEXAGESIMAL.matcher(text.strip());
    try {
      if (!parts.matches()) {
        return OptionalDouble.of(Double.parseDouble(text));
      }
      double size =
          Double.parseDouble(parts.group(2))
              + Double.parseDouble(parts.group(3)) / 60
              + Double.parseDouble(parts.group(4)) / 3600;
      return OptionalDouble.of(degreesPerUnit * (parts.group(1).equals("-") ? -size : size));
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }
}
