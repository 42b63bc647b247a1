package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.HeaderNode;
import io.github.roundstar.formats.IsoTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** The keys of a guide table's header, and what their values may be. */
enum MetaKey {
  START,
  GUIDE_SCALE(0.001, 1000, "1.25"),
  DECLINATION(-90, 90, "41.5"),
  HOUR_ANGLE(-12, 12, "-1.5"),
  PIER_SIDE("east", "west"),
  GUIDE_RATE(0.001, 10, "0.5"),
  GUIDE_EXPOSURE(0.0001, 3600, "2.0"),
  TIME_MARK("start", "middle", "end"),
  PULSE_ROW("same", "next"),
  GAIN_RA(0, 10, "0.7"),
  GAIN_DEC(0, 10, "0.7"),
  DEADBAND_RA(0, 1000, "0.2"),
  DEADBAND_DEC(0, 1000, "0.2"),
  PULSE_LIMIT(0, 1e6, "2000"),
  DEC_DIRECTION("both", "north", "south", "off"),
  SITE_LATITUDE(-90, 90, "48.2"),
  SITE_LONGITUDE(-180, 180, "11.6"),
  RIGHT_ASCENSION(0, 24, "5.59");

  private final List<String> words;
  private final double min;
  private final double max;
  private final String example;

  MetaKey(double min, double max, String example) {
    this.words = List.of();
    this.min = min;
    this.max = max;
    this.example = example;
  }

  MetaKey(String... words) {
    this.words = List.of(words);
    this.min = 0;
    this.max = 0;
    this.example = "2026-03-14T20:15:00+01:00";
  }

  String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Whether a number is one that the key may have. */
  boolean allows(double value) {
    return value >= min && value <= max;
  }

  static Optional<MetaKey> of(String key) {
    for (MetaKey known : values()) {
      if (known.key().equals(key)) {
        return Optional.of(known);
      }
    }
    return Optional.empty();
  }

  /** The value: a {@code Double}, an {@code OffsetDateTime} or one of the words. */
  Object parse(String file, HeaderNode node) throws FormatException {
    Optional<?> value = Optional.empty();
    if (node.kind() == HeaderNode.Kind.TEXT) {
      value =
          this == START
              ? IsoTime.withOffset(node.text())
              : words.isEmpty() ? number(node.number()) : word(node.text());
    }
    if (value.isPresent()) {
      return value.get();
    }
    String found =
        node.kind() == HeaderNode.Kind.TEXT ? "'" + node.text() + "'" : "more than one value";
    throw new FormatException(
        file, node.line(), key() + ": found " + found + ", expected " + expected(), remedy());
  }

  private Optional<String> word(String text) {
    return Optional.of(text).filter(words::contains);
  }

  private Optional<Double> number(OptionalDouble number) {
    double value = number.orElse(Double.NaN);
    return value >= min && value <= max ? Optional.of(value) : Optional.empty();
  }

  private String expected() {
    if (!words.isEmpty()) {
      return "one of " + String.join(", ", words);
    }
    return this == START ? "an instant such as " + example : "a number such as " + example;
  }

  private String remedy() {
    if (!words.isEmpty()) {
      return "use one of these words, or remove the key";
    }
    return this == START
        ? "write date, T, time and the offset from UTC"
        : String.format(Locale.ROOT, "give a number from %s to %s, or remove the key", min, max);
  }
}
