package io.github.roundstar.cli;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.pipeline.UnwritableOutputException;
import io.github.roundstar.results.Faults;
import java.util.List;

/** What the process's exit code says. */
enum ExitCode {
  DONE(0),
  /** A finding at or above the level that the user named. */
  FINDING(1),
  /** Options that cannot be met, an output folder that cannot be written to among them. */
  WRONG_USAGE(2),
  /** An input could not be used; the others still were. */
  UNUSABLE_INPUT(3),
  OWN_FAULT(4);

  private final int number;

  ExitCode(int number) {
    this.number = number;
  }

  int number() {
    return number;
  }

  /** Of a job that went on past what it could not use. */
  static ExitCode of(List<Faults.Caught> faults, List<String> unusable) {
    if (!faults.isEmpty()) {
      return OWN_FAULT;
    }
    return unusable.isEmpty() ? DONE : UNUSABLE_INPUT;
  }

  static ExitCode of(Exception failure) {
    if (failure instanceof UnusableInputException || failure instanceof FormatException) {
      return UNUSABLE_INPUT;
    }
    return failure instanceof UnwritableOutputException ? WRONG_USAGE : OWN_FAULT;
  }
}
