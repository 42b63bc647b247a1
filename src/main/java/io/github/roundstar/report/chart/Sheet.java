package io.github.roundstar.report.chart;

/**
 * What a chart is drawn on.
 *
 * @param id prefix of every id in it, unique on the page
 * @param width user units; CSS pixels at full size
 * @param height likewise
 * @param title short text alternative
 * @param description long text alternative: what a reader who cannot see it should know
 */
record Sheet(String id, int width, int height, String title, String description) {
  /** Width of a chart that fills the page. */
  static final int WIDE = 1200;

  /** Width of a chart that leaves room for the evidence at its side on a wide page. */
  static final int HALF = 720;

  /** Width of the form that a chart takes on a tablet. */
  static final int MEDIUM = 700;

  /** Width of the form that it takes on a phone. */
  static final int NARROW = 330;

  /** What the page's style sheet calls a chart of this width. */
  String shape() {
    return switch (width) {
      case WIDE -> "wide";
      case HALF -> "half";
      case MEDIUM -> "medium";
      case NARROW -> "narrow";
      default -> "small";
    };
  }
}
