package io.github.roundstar.cli;

import io.github.roundstar.pipeline.NightFault;
import java.io.PrintWriter;
import java.util.List;

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

  /** The nights that could not be finished, each by its name. */
  static void print(PrintWriter err, List<NightFault> faults, boolean verbose) {
    for (NightFault fault : faults) {
      err.print("night " + fault.night() + ": ");
      print(err, fault.cause(), verbose);
    }
  }

  private static String ownFault(Exception failure) {
    return "roundstar failed ("
        + failure
        + "): a fault of the tool: run again with --verbose and report what it prints";
  }
}
