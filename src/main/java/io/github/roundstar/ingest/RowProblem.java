package io.github.roundstar.ingest;

import io.github.roundstar.formats.LineFault;

/** Every kind of row that cannot be used, by its short name, and how to mend it. */
enum RowProblem {
  TEXT_IN_NUMBER(
      "text in a number", "write a number with a decimal point, or leave the field empty"),
  NO_TIME("no time", "give every row its time"),
  TEXT_IN_TIME("text in a time", "write the instant as 2026-03-14T20:15:30.5Z"),
  NOT_FINITE("number not finite", "leave the field empty where there is no value"),
  OUT_OF_RANGE("number out of range", "check the unit of the column in the header"),
  NO_RUN_NUMBER("run is not a whole number", "number the runs 1, 2, 3"),
  UNKNOWN_EVENT("unknown event", "use settling, lost, idle, dither, flip, or note: and a text"),
  ROW_CUT_SHORT("row cut short", "complete the row or remove it"),
  TOO_MANY_FIELDS(
      "too many fields", "quote a text that holds the delimiter, or remove the surplus fields"),
  TIME_BACKWARDS(
      "time runs backwards",
      "correct the times, or give the later part a run and start of its own"),
  SAME_TIME("same time, other values", "keep one of the two rows"),
  NUL_BYTE("NUL byte", LineFault.NUL_BYTE.remedy()),
  WRONG_ENCODING("wrong encoding", LineFault.NOT_UTF8.remedy()),
  LINE_TOO_LONG("line too long", LineFault.TOO_LONG.remedy()),
  QUOTE_NOT_CLOSED("quote not closed", LineFault.OPEN_QUOTE.remedy());

  private final String kind;
  private final String remedy;

  RowProblem(String kind, String remedy) {
    this.kind = kind;
    this.remedy = remedy;
  }

  static RowProblem of(LineFault fault) {
    return switch (fault) {
      case NUL_BYTE -> NUL_BYTE;
      case NOT_UTF8 -> WRONG_ENCODING;
      case TOO_LONG -> LINE_TOO_LONG;
      case OPEN_QUOTE -> QUOTE_NOT_CLOSED;
    };
  }

  String kind() {
    return kind;
  }

  String remedy() {
    return remedy;
  }
}
