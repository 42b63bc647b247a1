package io.github.roundstar.cli;

/** Entry point. */
public final class Main {
  private Main() {}

  /** Starts the tool. */
  public static void main(String[] arguments) {}
}
