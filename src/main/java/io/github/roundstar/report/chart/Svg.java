package io.github.roundstar.report.chart;

/**
 * An SVG element that is safe to insert into a page as it is: only {@link SvgStep} makes one.
 *
 * @see SvgStep
 */
public final class Svg {
  private final String markup;
  private final boolean small;

  Svg(String markup, boolean small) {
    this.markup = markup;
    this.small = small;
  }

  /** The element. */
  public String markup() {
    return markup;
  }

  /** Whether it fills less than half of a wide page. */
  public boolean small() {
    return small;
  }
}
