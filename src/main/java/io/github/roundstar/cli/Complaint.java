package io.github.roundstar.cli;

import io.github.roundstar.model.RepeatedLines;
import io.github.roundstar.results.Faults;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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

  /** What faults of the tool took, each by its name; all else was worked out. */
  static void print(PrintWriter err, List<Faults.Caught> faults, boolean verbose) {
    List<String> lines = new ArrayList<>();
    for (Faults.Caught fault : faults) {
      if (verbose) {
        fault.cause().printStackTrace(err);
      }
      lines.add(fault.part() + ": " + ownFault(fault.told().what()));
    }
    RepeatedLines.shortened(lines).forEach(err::println);
  }

  /** The nights that a fault took whole, for the summary; nothing where none was. */
  static Optional<String> lost(List<String> nights) {
    return nights.isEmpty()
        ? Optional.empty()
        : Optional.of(
            NightLines.line(
                "lost", String.join(", ", nights) + ": by a fault of roundstar, see the messages"));
  }

  private static String ownFault(Object failure) {
    return "roundstar failed ("
        + failure
        + "): a fault of the tool: run again with --verbose and report what it prints";
  }
}
