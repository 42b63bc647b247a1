package io.github.roundstar.cli;

import io.github.roundstar.pipeline.Progress;
import java.io.PrintWriter;
import java.util.Locale;

/** One line on a terminal that tells how far a job is and how long it will still take. */
final class ProgressLine implements Progress {
  private static final double NANOS = 1e9;

  private final PrintWriter err;
  private final String parts;
  private final long start = System.nanoTime();

  /**
   * A line.
   *
   * @param parts what the job is done by, in the plural
   */
  ProgressLine(PrintWriter err, String parts) {
    this.err = err;
    this.parts = parts;
  }

  @Override
  public void at(int done, int of) {
    if (of == 1) {
      return;
    }
    double seconds = (System.nanoTime() - start) / NANOS;
    err.print("\r" + text(parts, done, of, seconds) + (done == of ? "\n" : ""));
    err.flush();
  }

  /** What the line says; spaces at its end wipe out a longer one. */
  static String text(String parts, int done, int of, double seconds) {
    double left = seconds / done * (of - done);
    String remaining =
        left < 90
            ? String.format(Locale.ROOT, "%.0f s", left)
            : String.format(Locale.ROOT, "%.0f min", left / 60);
    return String.format(
        Locale.ROOT, "%d of %d %s analysed, about %s left   ", done, of, parts, remaining);
  }
}
