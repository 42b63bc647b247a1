package io.github.roundstar.report.chart;

/**
 * An SVG element that is safe to insert into a page as it is: only {@link SvgStep} makes one.
 *
 * @see SvgStep
 */
public final class Svg {
  private final String markup;

  Svg(String markup) {
    this.markup = markup;
  }

  /** The element. */
  public String markup() {
    return markup;
  }
}
