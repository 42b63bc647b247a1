package io.github.roundstar.ingest;

import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.text.LetteredNumber;
import io.github.roundstar.ingest.layout.text.Numbers;
import java.util.Optional;

/**
 * A pulse as written: a number, and the direction that a letter beside it tells.
 *
 * @param number the number
 * @param sign 1 for E or N, -1 for W or S, 0 without a letter
 */
record PulseText(String number, int sign) {
  /** Takes a field apart, such as {@code E120}, {@code 120 W}, or {@code 120} with its letter. */
  static PulseText of(String cell, Optional<String> letter, ColumnRule rule, ColumnRule codes)
      throws CellFault {
    if (letter.isPresent()) {
      return new PulseText(cell, sign(letter.get(), codes));
    }
    boolean signed = rule.positive().isPresent() && rule.toward().isEmpty();
    if (signed && Numbers.of(cell, true).isPresent()) {
      return new PulseText(cell, 0);
    }
    LetteredNumber parts = LetteredNumber.of(cell);
    boolean seconds = parts.word().equalsIgnoreCase("s") && !rule.means().isDec();
    boolean bare = parts.word().isEmpty() || parts.number().isEmpty() || seconds;
    return new PulseText(
        parts.number().isEmpty() ? cell : parts.number(), bare ? 0 : sign(parts.word(), rule));
  }

  private static int sign(String word, ColumnRule codes) throws CellFault {
    if (codes.toward().contains(word)) {
      return 1;
    }
    if (codes.away().contains(word)) {
      return -1;
    }
    boolean dec = codes.means().isDec();
    char letter = Character.toUpperCase(word.charAt(0));
    if (letter == (dec ? 'N' : 'E')) {
      return 1;
    }
    if (letter == (dec ? 'S' : 'W')) {
      return -1;
    }
    if ("-0.*".indexOf(letter) >= 0 || !codes.toward().isEmpty() && !codes.away().isEmpty()) {
      return 0;
    }
    throw new CellFault(
        RowProblem.TEXT_IN_NUMBER,
        "found '" + CellFault.shortened(word) + "', expected " + (dec ? "N or S" : "E or W"));
  }
}
