package io.github.roundstar.ingest.layout.text;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers of a log: with a point or a comma, any minus sign, and a unit behind. */
public final class Numbers {
  private static final int LONGEST = 40;

  /** What stands for no value wherever a number is expected. */
  private static final Set<String> NO_VALUE =
      Set.of(
          "-", "--", "---", "----", "nan", "null", "n/a", "na", "none", "*", "?", "...", "\u2014");

  private Numbers() {}

  /** Whether a field says that it has no value. */
  public static boolean isNoValue(String text) {
    return text.isEmpty()
        || text.length() <= 4 && NO_VALUE.contains(text.toLowerCase(Locale.ROOT))
        || text.length() <= 8 && isStroke(text);
  }

  /** One sign again and again. */
  private static boolean isStroke(String text) {
    return text.length() > 1
        && "*-?_~#.\u2013\u2014".indexOf(text.charAt(0)) >= 0
        && text.chars().allMatch(c -> c == text.charAt(0));
  }

  /** What says no in a column of flags, in several languages. */
  private static final Set<String> NO =
      Set.of(
          "0",
          "0.0",
          "false",
          "no",
          "n",
          "f",
          "nein",
          "non",
          "nee",
          "nao",
          "n\u00e3o",
          "off",
          ".",
          "falsch",
          "faux",
          "falso",
          "falsa");

  /** Whether a flag is not set. */
  public static boolean isNo(String text) {
    return isNoValue(text) && !text.equals("*") || NO.contains(text.toLowerCase(Locale.ROOT));
  }

  /** A finite or infinite number, NaN for {@code nan}; empty for anything else. */
  public static OptionalDouble of(String text, boolean decimalComma) {
    double plain = parse(text, text.length(), decimalComma);
    if (!Double.isNaN(plain)) {
      return OptionalDouble.of(plain);
    }
    if (text.equalsIgnoreCase("nan")) {
      return OptionalDouble.of(Double.NaN);
    }
    int end = unitAt(text);
    if (end > 0 && end < text.length() && Words.unit(text.substring(end)).isPresent()) {
      double number = parse(text, withoutBlanks(text, end), decimalComma);
      return Double.isNaN(number) ? OptionalDouble.empty() : OptionalDouble.of(number);
    }
    return OptionalDouble.empty();
  }

  /** The unit behind a number; empty where there is none. */
  public static Optional<String> unit(String text) {
    int end = unitAt(text);
    return end > 0 && end < text.length() ? Words.unit(text.substring(end)) : Optional.empty();
  }

  private static int withoutBlanks(String text, int end) {
    int at = end;
    while (at > 0 && text.charAt(at - 1) == ' ') {
      at--;
    }
    return at;
  }

  /** Where a unit may begin: behind the last digit or point. */
  public static int unitAt(String text) {
    int at = text.length();
    if (at > LONGEST) {
      return -1;
    }
    while (at > 0 && !isDigit(text.charAt(at - 1)) && text.charAt(at - 1) != '.') {
      at--;
    }
    return at;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /** NaN for what is no number; digits, one point and an exponent, nothing else Java knows. */
  private static double parse(String text, int end, boolean decimalComma) {
    if (end == 0 || end > LONGEST) {
      return Double.NaN;
    }
    int at = 0;
    boolean negative = text.charAt(0) == '-' || text.charAt(0) == '\u2212';
    if (negative || text.charAt(0) == '+') {
      at++;
    }
    long digits = 0;
    int count = 0;
    int places = 0;
    boolean point = false;
    for (; at < end; at++) {
      char c = text.charAt(at);
      if (isDigit(c)) {
        digits = digits * 10 + (c - '0');
        count++;
        places += point ? 1 : 0;
      } else if (!point && c == (decimalComma ? ',' : '.') || !point && c == '.') {
        point = true;
      } else {
        break;
      }
    }
    if (count == 0) {
      return Double.NaN;
    }
    if (at < end || count > 15 || places > 15) {
      return library(text.substring(0, end), decimalComma);
    }
    double value = digits / POWERS[places];
    return negative ? -value : value;
  }

  private static final double[] POWERS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
  };

  private static double library(String text, boolean decimalComma) {
    String plain = text.replace('\u2212', '-');
    plain = decimalComma ? plain.replace(',', '.') : plain;
    for (int i = 0; i < plain.length(); i++) {
      if (!isDigit(plain.charAt(i)) && "+-.eE".indexOf(plain.charAt(i)) < 0) {
        return Double.NaN;
      }
    }
    try {
      return Double.parseDouble(plain);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  private static final Pattern PARTS =
      Pattern.compile(
          "([+-]?)([0-9]{1,3})[^0-9.,+-]{1,3}([0-9]{1,2})(?:[^0-9.,+-]{1,3}([0-9]{1,2}(?:[.,][0-9]{1,9})?))?[^0-9]{0,3}");

  /** A decimal number, or parts such as {@code +41:30:15} or {@code 41d30m15s}. */
  public static OptionalDouble sexagesimal(String text, boolean decimalComma) {
    String plain = text.strip().replace('\u2212', '-');
    OptionalDouble number = of(plain, decimalComma);
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
