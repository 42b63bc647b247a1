package io.github.roundstar.cli;

import io.github.roundstar.pipeline.Progress;
import java.io.PrintWriter;
import java.util.Locale;

/** One line on a terminal that tells how far a job is and how long it will still take. */
final class ProgressLine implements Progress {
  private static final double NANOS = 1e9;

  /** What is done sooner needs no word. */
  private static final double SOON_SECONDS = 1;

  private final PrintWriter err;
  private final long start = System.nanoTime();
  private int shown;

  private ProgressLine(PrintWriter err) {
    this.err = err;
  }

  /** A line on a terminal whose user has not asked for silence; else nothing. */
  static Progress on(PrintWriter err, Loudness loudness) {
    return System.console() != null && !loudness.quiet() ? new ProgressLine(err) : SILENT;
  }

  @Override
  public void at(int done, int of) {
    double seconds = (System.nanoTime() - start) / NANOS;
    if (done == of) {
      err.print(shown == 0 ? "" : "\r" + " ".repeat(shown) + "\r");
    } else if (seconds > SOON_SECONDS) {
      String text = text(done, of, seconds);
      err.print("\r" + text);
      shown = Math.max(shown, text.length());
    }
    err.flush();
  }

  /** What the line says; spaces at its end wipe out a longer one. */
  static String text(int done, int of, double seconds) {
    double left = seconds / done * (of - done);
    String remaining =
        left < 90
            ? String.format(Locale.ROOT, "%.0f s", left)
            : String.format(Locale.ROOT, "%.0f min", left / 60);
    return String.format(Locale.ROOT, "%d of %d analysed, about %s left   ", done, of, remaining);
  }
}
