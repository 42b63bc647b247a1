package io.github.roundstar.ingest.layout;

/** A pattern that looks at a line too often, as nested repetitions do. */
public final class PatternTooSlowException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  PatternTooSlowException(String expression) {
    super(
        "the pattern "
            + expression
            + " takes too many steps: avoid a repetition inside a repetition such as (a+)+");
  }
}
