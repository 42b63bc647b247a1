package io.github.roundstar.report.chart;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import org.jfree.svg.SVGGraphics2D;

/**
 * The bundled font that all chart text is measured with. The page asks the browser for faces of the
 * same widths, so positions hold there.
 */
final class ChartFont {
  private static final String FILE = "/io/github/roundstar/report/LiberationSans-Regular.ttf";
  private static final float SIZE = 13;

  private static Font font;

  private ChartFont() {}

  /**
   * The font at its one size.
   *
   * @throws ChartsUnavailable if Java's text system cannot start
   */
  static synchronized Font load() throws ChartsUnavailable {
    if (font == null) {
      try {
        Font loaded = read().deriveFont(SIZE);
        new SVGGraphics2D(1, 1).getFontMetrics(loaded).stringWidth("0");
        font = loaded;
      } catch (IOException | FontFormatException | LinkageError | InternalError e) {
        // The last two are how the JDK reports missing native libraries and a missing font set-up.
        throw new ChartsUnavailable(e);
      }
    }
    return font;
  }

  private static Font read() throws IOException, FontFormatException {
    try (InputStream in = ChartFont.class.getResourceAsStream(FILE)) {
      if (in == null) {
        throw new FileNotFoundException(FILE);
      }
      return Font.createFont(Font.TRUETYPE_FONT, in);
    }
  }
}
