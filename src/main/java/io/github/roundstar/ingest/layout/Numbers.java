package io.github.roundstar.ingest.layout;

import java.util.OptionalDouble;

/** Numbers of a log. */
public final class Numbers {
  private static final int LONGEST = 40;

  private Numbers() {}

  /** A finite or infinite number, NaN for {@code nan}; empty for anything else. */
  public static OptionalDouble of(String text, boolean decimalComma) {
    String plain = decimalComma ? text.replace(',', '.') : text;
    if (plain.isEmpty() || plain.length() > LONGEST) {
      return OptionalDouble.empty();
    }
    if (plain.equalsIgnoreCase("nan")) {
      return OptionalDouble.of(Double.NaN);
    }
    if (!isPlain(plain)) {
      return OptionalDouble.empty();
    }
    try {
      return OptionalDouble.of(Double.parseDouble(plain));
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  /** Digits, signs, points and exponents only: the library knows more than a log may write. */
  private static boolean isPlain(String text) {
    boolean digit = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      digit |= c >= '0' && c <= '9';
      if (!(c >= '0' && c <= '9') && "+-.eE".indexOf(c) < 0) {
        return false;
      }
    }
    return digit;
  }
}
