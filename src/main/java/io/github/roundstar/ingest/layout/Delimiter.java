package io.github.roundstar.ingest.layout;

import java.util.Locale;

/** What separates the fields of a row. */
public enum Delimiter {
  /** A comma. */
  COMMA(','),
  /** A comma and a blank, so that a comma alone can be a decimal sign. */
  COMMA_BLANK(','),
  /** A semicolon. */
  SEMICOLON(';'),
  /** A tabulator. */
  TAB('\t'),
  /** A vertical bar. */
  PIPE('|'),
  /** Any number of blanks or tabulators. */
  BLANKS(' '),
  /** Any run of blanks, tabulators, commas, semicolons and bars. */
  ANY(' '),
  /** Nothing: each field has its width. */
  FIXED('\0'),
  /** Fields written as key and value, such as {@code ra=0.31}, found by their keys. */
  KEY_VALUE('='),
  /** One JSON object to a line; the keys of objects within it are joined by points. */
  JSON('{');

  private final char sign;

  Delimiter(char sign) {
    this.sign = sign;
  }

  public char sign() {
    return sign;
  }

  /** Its word in a layout file. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What joins the lines of one row. */
  public String joint() {
    return switch (this) {
      case ANY, FIXED -> " ";
      case KEY_VALUE -> "\u001f"; // lines of keys part their fields each in its own way
      case COMMA_BLANK -> ", ";
      default -> String.valueOf(sign);
    };
  }

  /** Whether fields are told by keys in every row. */
  public boolean isKeyed() {
    return this == KEY_VALUE || this == JSON;
  }
}
