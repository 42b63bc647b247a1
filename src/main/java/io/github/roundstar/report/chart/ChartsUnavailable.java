package io.github.roundstar.report.chart;

/** Java's text system cannot start on this machine, so nothing can be drawn. */
public final class ChartsUnavailable extends Exception {
  private static final long serialVersionUID = 1;

  ChartsUnavailable(Throwable cause) {
    super(
        "Charts are left out because Java cannot load a font here: install fontconfig, freetype and"
            + " one font (on Debian: fontconfig libfreetype6 fonts-dejavu-core) and run again.",
        cause);
  }
}
