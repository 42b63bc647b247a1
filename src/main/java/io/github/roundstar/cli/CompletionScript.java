package io.github.roundstar.cli;

import picocli.AutoComplete;

/** Prints the shells' completion of the tool's commands and options, for the distribution. */
final class CompletionScript {
  private CompletionScript() {}

  /** Takes no arguments. */
  public static void main(String[] arguments) {
    System.out.print(AutoComplete.bash("roundstar", Main.line()));
    System.out.flush();
  }
}
