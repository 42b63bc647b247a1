package io.github.roundstar.ingest.layout;

/** What separates the fields of a row. */
public enum Delimiter {
  /** A comma. */
  COMMA(','),
  /** A semicolon. */
  SEMICOLON(';'),
  /** A tabulator. */
  TAB('\t'),
  /** A vertical bar. */
  PIPE('|'),
  /** Any number of blanks or tabulators. */
  BLANKS(' '),
  /** Nothing: each field has its width. */
  FIXED('\0');

  private final char sign;

  Delimiter(char sign) {
    this.sign = sign;
  }

  char sign() {
    return sign;
  }
}
