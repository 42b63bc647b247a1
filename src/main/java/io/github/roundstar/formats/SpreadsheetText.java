package io.github.roundstar.formats;

/**
 * Text that a spreadsheet shows as it is: what it would run as a formula gets an apostrophe before
 * it.
 *
 * @see "OWASP, CSV Injection: cells that begin with an operator, an at sign, tab or carriage
 *     return"
 */
final class SpreadsheetText {
  private static final String STARTS_FORMULA = "=+-@\t\r\n";

  private SpreadsheetText() {}

  static String of(String text) {
    return !text.isEmpty() && STARTS_FORMULA.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }
}
