package io.github.roundstar.report.chart;

import java.awt.Color;
import java.util.Locale;

/**
 * The palette. A chart is drawn in the light theme's colours; {@link SvgStep} turns each into the
 * page's variable, so that every theme applies.
 */
enum Ink {
  PAPER(0xFAF9F6),
  INK(0x1D1B18),
  QUIET(0x5E5A53),
  RULE(0xD9D5CC),
  RA(0x8F5200),
  DEC(0x006D77);

  private final int rgb;

  Ink(int rgb) {
    this.rgb = rgb;
  }

  Color color() {
    return new Color(rgb);
  }

  /** Opacity 0..1. */
  Color color(double opacity) {
    return new Color(
        rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF, (int) Math.round(opacity * 255));
  }

  /** The page's variable, without its dashes. */
  String variableName() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The variable for {@code rgb(r,g,b)} as the SVG writer prints it. */
  static String variable(String printed) {
    for (Ink ink : values()) {
      Color color = ink.color();
      String own = "rgb(" + color.getRed() + "," + color.getGreen() + "," + color.getBlue() + ")";
      if (own.equals(printed)) {
        return "var(--" + ink.variableName() + ")";
      }
    }
    throw new IllegalArgumentException("colour outside the palette: " + printed);
  }
}
