package io.github.roundstar.cli;

import java.io.PrintWriter;

/** Tells the user why something failed; a stack trace only on request. */
final class Complaint {
  private Complaint() {}

  static void print(PrintWriter err, Exception failure, boolean verbose) {
    if (verbose) {
      failure.printStackTrace(err);
    }
    err.println(
        ExitCode.of(failure) == ExitCode.OWN_FAULT ? ownFault(failure) : failure.getMessage());
  }

  private static String ownFault(Exception failure) {
    return "roundstar failed ("
        + failure
        + "): a fault of the tool: run again with --verbose and report what it prints";
  }
}
