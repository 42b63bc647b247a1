package io.github.roundstar.ingest;

import io.github.roundstar.ingest.layout.text.Numbers;

/** A field that cannot be read, so that its row cannot be used. */
final class CellFault extends Exception {
  private static final long serialVersionUID = 1L;
  private static final int LONGEST_QUOTE = 40;

  private final RowProblem problem;

  CellFault(RowProblem problem, String what) {
    super(what, null, false, false);
    this.problem = problem;
  }

  RowProblem problem() {
    return problem;
  }

  static double number(String text, boolean decimalComma) throws CellFault {
    var number = Numbers.of(text, decimalComma);
    if (number.isEmpty()) {
      throw new CellFault(
          RowProblem.TEXT_IN_NUMBER, "found '" + shortened(text) + "', expected a number");
    }
    return number.getAsDouble();
  }

  static String shortened(String text) {
    return text.length() <= LONGEST_QUOTE ? text : text.substring(0, LONGEST_QUOTE) + "...";
  }
}
