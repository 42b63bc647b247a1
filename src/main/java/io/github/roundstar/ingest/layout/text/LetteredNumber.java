package io.github.roundstar.ingest.layout.text;

/**
 * A field such as {@code E120}, {@code 120 ms W} or {@code west: 0.31}, taken apart.
 *
 * @param word what stands before the number, or behind it and its unit; empty for none
 * @param number the number with its unit; empty for none
 */
public record LetteredNumber(String word, String number) {
  /** Takes a field apart. */
  public static LetteredNumber of(String cell) {
    int from = 0;
    while (from < cell.length() && !startsNumber(cell, from)) {
      from++;
    }
    if (from == cell.length()) {
      return new LetteredNumber(cell, "");
    }
    int to = from + 1;
    while (to < cell.length() && (isDigit(cell.charAt(to)) || ".,".indexOf(cell.charAt(to)) >= 0)) {
      to++;
    }
    to = exponentEnd(cell, to);
    String number = cell.substring(from, to);
    String before = word(cell.substring(0, from));
    String behind = word(cell.substring(to));
    if (!behind.isEmpty()) {
      int blank = behind.indexOf(' ');
      String unit = blank < 0 ? behind : behind.substring(0, blank);
      if (Words.unit(unit).isPresent() && !(before.isEmpty() && blank < 0 && isCompass(unit))) {
        number += " " + unit;
        behind = blank < 0 ? "" : word(behind.substring(blank));
      } else if (blank < 0 && before.isEmpty() && behind.length() > 1) {
        int last = behind.length() - 1;
        if (Words.unit(behind.substring(0, last)).isPresent()) {
          number += " " + behind.substring(0, last); // a unit and a letter without a gap
          behind = behind.substring(last);
        }
      }
    }
    return new LetteredNumber(before.isEmpty() ? behind : before, number);
  }

  /** Behind an exponent such as {@code e+02}; an E before anything else is a letter. */
  private static int exponentEnd(String cell, int from) {
    boolean exponent = from + 2 < cell.length() && "eE".indexOf(cell.charAt(from)) >= 0;
    int at = exponent && "+-\u2212".indexOf(cell.charAt(from + 1)) >= 0 ? from + 2 : from;
    int end = at;
    while (at > from && end < cell.length() && isDigit(cell.charAt(end))) {
      end++;
    }
    return end > at ? end : from;
  }

  /** S is a direction before it is a second. */
  private static boolean isCompass(String word) {
    return word.equalsIgnoreCase("s");
  }

  private static boolean startsNumber(String cell, int at) {
    char c = cell.charAt(at);
    boolean sign = "+-\u2212.".indexOf(c) >= 0;
    return isDigit(c) || sign && at + 1 < cell.length() && isDigit(cell.charAt(at + 1));
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static String word(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && joins(text.charAt(from))) {
      from++;
    }
    while (to > from && joins(text.charAt(to - 1))) {
      to--;
    }
    return text.substring(from, to);
  }

  private static boolean joins(char c) {
    return " \t\n\u000b\f\r:=_/-".indexOf(c) >= 0;
  }
}
