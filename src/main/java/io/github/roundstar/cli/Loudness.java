package io.github.roundstar.cli;

import io.github.roundstar.pipeline.Progress;
import java.io.PrintWriter;
import picocli.CommandLine.Option;

/** How much is printed. */
final class Loudness {
  @Option(names = "--quiet", description = "Print only the paths of what was written.")
  private boolean quiet;

  @Option(names = "--verbose", description = "Print a stack trace when something fails.")
  private boolean verbose;

  boolean quiet() {
    return quiet;
  }

  boolean verbose() {
    return verbose;
  }

  /**
   * How a long job shows how far it is: on a terminal only, and not where quiet is wanted.
   *
   * @param parts what the job is done by, in the plural
   */
  Progress progress(PrintWriter err, String parts) {
    return System.console() != null && !quiet ? new ProgressLine(err, parts) : Progress.SILENT;
  }
}
