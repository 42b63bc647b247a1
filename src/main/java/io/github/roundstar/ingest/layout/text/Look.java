package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.TimeForm;
import java.util.List;
import java.util.regex.Pattern;

/** What a field looks like, and how much a line of such fields looks like a row of numbers. */
public enum Look {
  NUMBER,
  CLOCK,
  LETTERED,
  WORD,
  NONE,
  JUNK;

  boolean isNumeric() {
    return this == NUMBER || this == CLOCK || this == LETTERED;
  }

  private static final double CLEAN_POWER = 4;
  private static final Pattern NUMBER_IN_WORD =
      Pattern.compile("[0-9]*[.,]?[0-9]+([eE][+-]?[0-9]+)?");

  /** Numbers of a line, less what is neither number, word nor clock; 0 for a line of words. */
  static double worth(List<String> cells) {
    return worth(cells.stream().map(Look::of).toArray(Look[]::new));
  }

  /** The same of fields with these looks. */
  static double worth(Look... looks) {
    int clean = 0;
    int numeric = 0;
    for (Look look : looks) {
      clean += look == JUNK ? 0 : 1;
      numeric += look.isNumeric() ? 1 : 0;
    }
    return numeric < 2 ? 0 : numeric * Math.pow(clean / (double) looks.length, CLEAN_POWER);
  }

  /** The look of a field. */
  static Look of(String cell) {
    if (Numbers.isNoValue(cell)) {
      return NONE;
    }
    if (cell.length() > 60) {
      return JUNK;
    }
    if (startsAsNumber(cell)) {
      if (Numbers.of(cell, true).isPresent()) {
        return NUMBER;
      }
      if (isClock(cell)) {
        return CLOCK;
      }
      return isLettered(cell) ? LETTERED : JUNK;
    }
    int digits = 0;
    int others = 0;
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      digits += Character.isDigit(c) ? 1 : 0;
      others +=
          Character.isLetterOrDigit(c) || c == ' ' || c == '-' || c == '_' || c == '.' ? 0 : 1;
    }
    if (digits == 0) {
      return others == 0 && cell.length() <= 30 || cell.length() == 1 ? WORD : JUNK;
    }
    if (isLettered(cell)) {
      return LETTERED;
    }
    return isClock(cell) ? CLOCK : JUNK;
  }

  private static boolean isLettered(String cell) {
    LetteredNumber parts = LetteredNumber.of(cell);
    return cell.indexOf('=') < 0 // a key and its value
        && !parts.number().isEmpty()
        && !parts.word().isEmpty()
        && parts.word().length() <= 8
        && (parts.word().chars().allMatch(Character::isLetter) || parts.word().length() == 1)
        && LetteredNumber.of(NUMBER_IN_WORD.matcher(cell).replaceFirst("")).number().isEmpty();
  }

  private static boolean isClock(String cell) {
    ClockText read = ClockText.of(cell, TimeForm.DateOrder.DMY);
    return read.time().isPresent()
        || read.date().isPresent()
        || ClockText.of(cell, TimeForm.DateOrder.MDY).date().isPresent()
        || ClockText.elapsedSeconds(cell).isPresent();
  }

  public static boolean startsAsNumber(String cell) {
    int at = !cell.isEmpty() && "+-\u2212".indexOf(cell.charAt(0)) >= 0 ? 1 : 0;
    at += cell.length() > at && ".,".indexOf(cell.charAt(at)) >= 0 ? 1 : 0;
    return cell.length() > at && cell.charAt(at) >= '0' && cell.charAt(at) <= '9';
  }
}
