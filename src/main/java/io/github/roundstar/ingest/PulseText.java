package io.github.roundstar.ingest;

import java.util.Optional;

/**
 * A pulse as written: a number, and the direction that a letter beside it tells.
 *
 * @param number the number
 * @param sign 1 for E or N, -1 for W or S, 0 without a letter
 */
record PulseText(String number, int sign) {
  /** Takes a field apart, such as {@code E120}, {@code 120 W}, or {@code 120} with its letter. */
  static PulseText of(String cell, Optional<String> letter, boolean dec) throws CellFault {
    String text = cell;
    String word = letter.orElse("");
    if (word.isEmpty()) {
      int from = 0;
      while (from < text.length() && Character.isLetter(text.charAt(from))) {
        from++;
      }
      int to = text.length();
      while (to > from && Character.isLetter(text.charAt(to - 1))) {
        to--;
      }
      word = from > 0 ? text.substring(0, from) : text.substring(to);
      if (from == text.length()) {
        return new PulseText(text, 0);
      }
      text = text.substring(from, to).strip();
      if (word.equalsIgnoreCase("nan")) {
        word = "";
      }
    }
    return new PulseText(text, word.isEmpty() ? 0 : sign(word, dec));
  }

  private static int sign(String word, boolean dec) throws CellFault {
    char letter = Character.toUpperCase(word.charAt(0));
    if (letter == (dec ? 'N' : 'E')) {
      return 1;
    }
    if (letter == (dec ? 'S' : 'W')) {
      return -1;
    }
    if (letter == '-' || letter == '0' || letter == '.') {
      return 0;
    }
    throw new CellFault(
        RowProblem.TEXT_IN_NUMBER,
        "found '" + CellFault.shortened(word) + "', expected " + (dec ? "N or S" : "E or W"));
  }
}
