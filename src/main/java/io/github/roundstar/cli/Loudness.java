package io.github.roundstar.cli;

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
}
