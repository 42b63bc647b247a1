package io.github.roundstar.formats;

/** What can make a line unreadable before anyone looks at its fields. */
public enum LineFault {
  /** A NUL byte, as a power failure leaves them where text should be. */
  NUL_BYTE("NUL byte", "the line was lost when writing was cut off; nothing can be mended"),
  /** Bytes in another encoding. */
  NOT_UTF8("bytes that are not UTF-8", Utf8.REMEDY),
  /** Longer than {@link TextSource#LONGEST_LINE}. */
  TOO_LONG(
      "line longer than " + TextSource.LONGEST_LINE + " bytes",
      "check that this is a text log, one frame to a line"),
  /** A quoted field without its closing quote, or with text after it. */
  OPEN_QUOTE("quote that is not closed", "close the quote on the same line, double a quote inside");

  private final String what;
  private final String remedy;

  LineFault(String what, String remedy) {
    this.what = what;
    this.remedy = remedy;
  }

  /** What is wrong, in a few words. */
  public String what() {
    return what;
  }

  /** How to mend it. */
  public String remedy() {
    return remedy;
  }
}
