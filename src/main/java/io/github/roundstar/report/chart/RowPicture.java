package io.github.roundstar.report.chart;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.ComparedFigure;
import java.util.List;

/**
 * A picture small enough for a row of a table: a figure before and after, or a night in a line. All
 * rows of a table share one scale. Of a figure it counts in what nights differ by themselves, and
 * better lies to the left.
 */
public final class RowPicture {
  /** Twice what nights differ by: nineteen of twenty nights without a change lie within. */
  private static final double BAND = 2;

  private static final int WIDTH = 340;
  private static final int NIGHT_WIDTH = 192;
  private static final int HEIGHT = 26;
  private static final int MARGIN = 8;
  private static final int BEFORE = 8;
  private static final int AFTER = 18;

  private final double low;
  private final double high;

  private RowPicture(double low, double high) {
    this.low = low;
    this.high = high;
  }

  /** The scale on which all these figures have room. */
  public static RowPicture of(List<ComparedFigure> figures) {
    Extent extent = new Extent().add(bent(-3 * BAND)).add(bent(3 * BAND));
    for (ComparedFigure figure : figures) {
      for (Estimate side : List.of(figure.before(), figure.after())) {
        extent.add(bent(steps(figure, side.lo95()))).add(bent(steps(figure, side.hi95())));
      }
    }
    return new RowPicture(extent.low(), extent.high());
  }

  /** One figure before, hollow, and after, filled, each with its interval. */
  public Svg changed(ComparedFigure figure) {
    String words = figure.name() + " from " + figure.fromTo();
    StringBuilder svg = opened(WIDTH, words);
    double from = place(bent(-BAND));
    svg.append("<path fill=\"var(--rule)\" d=\"M")
        .append(at(from, 0))
        .append('H')
        .append(SvgStep.decimals(place(bent(BAND))))
        .append('V')
        .append(HEIGHT)
        .append('H')
        .append(SvgStep.decimals(from))
        .append("Z\"/>");
    side(svg, figure, figure.before(), BEFORE, Ink.QUIET, Ink.PAPER);
    side(svg, figure, figure.after(), AFTER, Ink.RA, Ink.RA);
    return new Svg(svg.append("</svg>").toString(), "small", words);
  }

  /**
   * A night as the greatest offset of each stretch, on a scale of square roots.
   *
   * @param outline the offsets [arcsec]; NaN in gaps
   * @param highest offset that the scale ends at [arcsec]
   */
  public static Svg night(double[] outline, double highest) {
    StringBuilder svg = opened(NIGHT_WIDTH, "the night in a line");
    svg.append("<path stroke=\"var(--ra)\" stroke-width=\"1.6\" d=\"");
    for (int i = 0; i < outline.length; i++) {
      if (!Double.isNaN(outline[i])) {
        double x = (i + 0.5) * NIGHT_WIDTH / outline.length;
        double share = Math.sqrt(outline[i] / Math.max(highest, 1e-9));
        svg.append('M')
            .append(at(x, HEIGHT))
            .append('V')
            .append(SvgStep.decimals(HEIGHT - 1 - (HEIGHT - 2) * share));
      }
    }
    return new Svg(svg.append("\"/></svg>").toString(), "small", "");
  }

  private static StringBuilder opened(int width, String words) {
    return new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"row\" width=\"")
        .append(width)
        .append("\" height=\"")
        .append(HEIGHT)
        .append("\" viewBox=\"0 0 ")
        .append(width + " " + HEIGHT)
        .append("\" role=\"img\" aria-label=\"")
        .append(SvgStep.escaped(words))
        .append("\">");
  }

  private void side(
      StringBuilder svg, ComparedFigure figure, Estimate value, int y, Ink line, Ink inside) {
    double one = place(bent(steps(figure, value.lo95())));
    double other = place(bent(steps(figure, value.hi95())));
    svg.append("<path stroke=\"var(--")
        .append(line.variableName())
        .append(")\" stroke-width=\"2\" d=\"M")
        .append(at(Math.min(one, other), y))
        .append('H')
        .append(SvgStep.decimals(Math.max(one, other)))
        .append("\"/><circle r=\"4\" cx=\"")
        .append(SvgStep.decimals(place(bent(steps(figure, value.value())))))
        .append("\" cy=\"")
        .append(y)
        .append("\" stroke=\"var(--")
        .append(line.variableName())
        .append(")\" stroke-width=\"1.6\" fill=\"var(--")
        .append(inside.variableName())
        .append(")\"/>");
  }

  /** How far a value is from the one before, in what nights differ by; better is negative. */
  private static double steps(ComparedFigure figure, double value) {
    double away = (value - figure.before().value()) / Math.max(figure.nightToNight(), 1e-9);
    return figure.better().equals("higher") ? -away : away;
  }

  /** Even near zero, and ever closer farther out, so that a large change leaves room for others. */
  private static double bent(double steps) {
    double half = steps / BAND;
    return Math.signum(half) * Math.log(Math.abs(half) + Math.sqrt(half * half + 1));
  }

  private double place(double bent) {
    return MARGIN + (WIDTH - 2 * MARGIN) * (bent - low) / (high - low);
  }

  private static String at(double x, int y) {
    return SvgStep.decimals(x) + "," + y;
  }
}
