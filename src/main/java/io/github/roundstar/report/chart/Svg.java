package io.github.roundstar.report.chart;

/**
 * An SVG element that is safe to insert into a page as it is: only {@link SvgStep} makes one.
 *
 * @see SvgStep
 */
public final class Svg {
  private final String markup;
  private final String shape;
  private final String title;
  private final String table;
  private final boolean fits;

  Svg(String markup, String shape, String title) {
    this(markup, shape, title, "", false);
  }

  private Svg(String markup, String shape, String title, String table, boolean fits) {
    this.markup = markup;
    this.shape = shape;
    this.title = title;
    this.table = table;
    this.fits = fits;
  }

  /** The same with another form of it, which the style sheet shows on narrower screens. */
  Svg orNarrower(Svg form) {
    return new Svg(markup + form.markup, shape, title, table, true);
  }

  /** Whether it has a form for every width, so that it need not be scrolled. */
  public boolean fits() {
    return fits;
  }

  /** The same with the numbers it shows. */
  Svg with(ChartTable numbers) {
    return new Svg(markup, shape, title, numbers.markup(title), fits);
  }

  /** The same for a place where a table beside it has every number. */
  public Svg withoutNumbers() {
    return new Svg(markup, shape, title, "", fits);
  }

  /** What it shows, in plain characters. */
  public String title() {
    return title;
  }

  /** A folded table of the numbers it shows, safe to insert as it is. */
  public String table() {
    return table;
  }

  /** The element. */
  public String markup() {
    return markup;
  }

  /**
   * How much of a wide page it takes, as the style sheet calls it: {@code wide}, {@code half} or
   * {@code small}.
   */
  public String shape() {
    return shape;
  }
}
