package io.github.roundstar.pipeline;

import io.github.roundstar.formats.FormatException;
import java.util.Locale;

/** What the user is told when a log does not fit into the memory. */
final class Memory {
  private static final double MEBIBYTE = 1 << 20;

  private Memory() {}

  /** Complaint with its remedy. */
  static String exhaustedBy(String what) {
    return FormatException.located(
        what,
        0,
        String.format(
            Locale.ROOT,
            "too long for the %.0f MiB of memory that Java may use",
            Runtime.getRuntime().maxMemory() / MEBIBYTE),
        "let it use more, as in JAVA_TOOL_OPTIONS=-Xmx4g, or split the log");
  }
}
