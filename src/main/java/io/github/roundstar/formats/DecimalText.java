package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

/**
 * Decimal numbers in ASCII, read in place. Exactly what {@link Double#parseDouble} gives, for
 * {@code [+-]digits[.digits][e[+-]digits]}, {@code inf}, {@code infinity} and {@code nan} in any
 * case; nothing else that Java accepts (hexadecimal, {@code 1d}, {@code 1f}).
 *
 * <p>A significand below 2<sup>53</sup> and a power of ten up to 22 are both exact doubles, so one
 * multiplication or division rounds correctly; the rest is left to the library.
 *
 * @see "Clinger (1990), How to read floating point numbers accurately, PLDI '90, 92"
 */
final class DecimalText {
  private static final double[] POWERS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };
  private static final int MOST_DIGITS = 18;

  private DecimalText() {}

  /** The number; NaN if it is {@code nan} or no number at all. */
  static double parse(byte[] text, int from, int to) {
    int at = from;
    boolean negative = text[at] == '-';
    if (negative || text[at] == '+') {
      at++;
    }
    int digitsFrom = at;
    long significand = 0;
    while (at < to && isDigit(text[at])) {
      significand = significand * 10 + (text[at++] - '0');
    }
    int digits = at - digitsFrom;
    int fraction = 0;
    if (at < to && text[at] == '.') {
      int point = ++at;
      while (at < to && isDigit(text[at])) {
        significand = significand * 10 + (text[at++] - '0');
      }
      fraction = at - point;
      digits += fraction;
    }
    if (digits == 0) {
      return word(text, digitsFrom, to, negative);
    }
    if (at < to) {
      return hasExponent(text, at, to) ? library(text, from, to) : Double.NaN;
    }
    if (digits > MOST_DIGITS || significand >= 1L << 53 || fraction >= POWERS.length) {
      return library(text, from, to);
    }
    double value = significand / POWERS[fraction];
    return negative ? -value : value;
  }

  static boolean isNan(byte[] text, int from, int to) {
    int at = to > from && (text[from] == '-' || text[from] == '+') ? from + 1 : from;
    return equalsWord(text, at, to, "nan");
  }

  private static double word(byte[] text, int from, int to, boolean negative) {
    if (equalsWord(text, from, to, "inf") || equalsWord(text, from, to, "infinity")) {
      return negative ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }
    return Double.NaN;
  }

  /** Compares without a locale: ASCII letters alone differ by one bit between cases. */
  private static boolean equalsWord(byte[] text, int from, int to, String lowerCase) {
    if (to - from != lowerCase.length()) {
      return false;
    }
    for (int i = 0; i < lowerCase.length(); i++) {
      if ((text[from + i] | 0x20) != lowerCase.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private static boolean hasExponent(byte[] text, int from, int to) {
    int at = from;
    if ((text[at++] | 0x20) != 'e') {
      return false;
    }
    if (at < to && (text[at] == '-' || text[at] == '+')) {
      at++;
    }
    if (at == to) {
      return false;
    }
    while (at < to && isDigit(text[at])) {
      at++;
    }
    return at == to;
  }

  private static double library(byte[] text, int from, int to) {
    return Double.parseDouble(new String(text, from, to - from, ISO_8859_1));
  }

  private static boolean isDigit(byte b) {
    return b >= '0' && b <= '9';
  }
}
