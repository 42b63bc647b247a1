package io.github.roundstar.ingest.layout;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers that may be written in degrees or hours, minutes and seconds. */
public final class Sexagesimal {
  private static final int LONGEST = 40;
  private static final Pattern PARTS =
      Pattern.compile(
          "([+-]?)([0-9]{1,3})[^0-9.,+-]{1,3}([0-9]{1,2})(?:[^0-9.,+-]{1,3}([0-9]{1,2}(?:[.,][0-9]{1,9})?))?[^0-9]{0,3}");

  private Sexagesimal() {}

  /** A decimal number, or parts such as {@code +41:30:15} or {@code 41d30m15s}. */
  public static OptionalDouble of(String text, boolean decimalComma) {
    String plain = text.strip().replace('\u2212', '-');
    OptionalDouble number = Numbers.of(plain, decimalComma);
    if (number.isPresent() || plain.length() > LONGEST) {
      return number;
    }
    Matcher parts = PARTS.matcher(plain);
    if (!parts.matches()) {
      return OptionalDouble.empty();
    }
    double value = Integer.parseInt(parts.group(2)) + Integer.parseInt(parts.group(3)) / 60.0;
    if (parts.group(4) != null) {
      value += Double.parseDouble(parts.group(4).replace(',', '.')) / 3600;
    }
    return OptionalDouble.of(parts.group(1).equals("-") ? -value : value);
  }
}
