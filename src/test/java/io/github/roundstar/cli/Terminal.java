package io.github.roundstar.cli;

import io.github.roundstar.results.NightResult;
import java.util.List;
import picocli.CommandLine.Help.Ansi;

/** A night's lines on a terminal without colours, for tests that read them. */
public final class Terminal {
  private Terminal() {}

  /** The lines. */
  public static List<String> of(NightResult result) {
    return NightLines.of(result, Ansi.OFF);
  }
}
