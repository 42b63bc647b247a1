package io.github.roundstar.report.chart;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Exposure;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.jfree.chart.plot.XYPlot;

/**
 * A sheet of star footprints, all on one scale, north up and east left: for each exposure the star
 * image that the guide log implies and beside it the measured one.
 */
public final class FootprintSheet {
  private static final int COLUMNS = 12;
  private static final int MOST = 144;
  private static final int CELL_WIDTH = Sheet.WIDE / COLUMNS;
  private static final int CELL_HEIGHT = 84;
  private static final int TOP = 34;

  /** Half of the room for one footprint [px]. */
  private static final double ROOM = 21;

  private FootprintSheet() {}

  /**
   * Draws it; empty without an exposure whose shape is known.
   *
   * @param arcsecPerPixel scale of the main camera, where it is known
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(List<Exposure> exposures, OptionalDouble arcsecPerPixel)
      throws ChartsUnavailable {
    List<Exposure> known =
        exposures.stream()
            .filter(e -> e.predictedElongation() != null || width(e) > 0)
            .limit(MOST)
            .toList();
    if (known.isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    int rows = (known.size() + COLUMNS - 1) / COLUMNS;
    int height = TOP + rows * CELL_HEIGHT + 6;
    XYPlot plot = canvas(style, height);
    double scale = ROOM / longest(known);
    Path2D predicted = new Path2D.Double();
    Path2D measured = new Path2D.Double();
    DataLabels labels = DataLabels.beside(style.font());
    for (int i = 0; i < known.size(); i++) {
      Exposure e = known.get(i);
      double x = (i % COLUMNS) * CELL_WIDTH;
      double y = height - TOP - (i / COLUMNS) * CELL_HEIGHT - ROOM - 2;
      if (e.predictedMajorFwhmArcsec() != null) {
        append(
            predicted,
            x + 0.28 * CELL_WIDTH,
            y,
            scale * e.predictedMajorFwhmArcsec() / 2,
            scale * e.predictedMinorFwhmArcsec() / 2,
            e.predictedAngleDeg());
      }
      if (width(e) > 0) {
        double root = Math.sqrt(e.measuredElongation().value());
        append(
            measured,
            x + 0.72 * CELL_WIDTH,
            y,
            scale * width(e) * root / 2,
            scale * width(e) / root / 2,
            e.measuredAngleDeg());
      }
      labels.add(
          x + CELL_WIDTH / 2.0,
          y - ROOM,
          0,
          14,
          DataLabels.Anchor.MIDDLE,
          label(exposures.indexOf(e) + 1, e.verdict()),
          e.verdict().equals("trailed") ? Ink.INK.color() : Ink.QUIET.color());
    }
    legend(plot, style, height, scale, arcsecPerPixel);
    plot.addAnnotation(DataPath.filled(predicted, Ink.DEC.color(0.75)));
    plot.addAnnotation(DataPath.filled(measured, Ink.RA.color(0.75)));
    plot.addAnnotation(labels);
    return Optional.of(
        style.draw(
            plot,
            new Sheet(
                "footprints", Sheet.WIDE, height, "Star footprints", words(known, exposures))));
  }

  private static XYPlot canvas(ChartStyle style, int height) {
    ListedAxis across = style.horizontal(new ListedAxis(0, Sheet.WIDE, List.of()), null);
    across.setVisible(false);
    ListedAxis along = style.vertical(new ListedAxis(0, height, List.of()));
    along.setVisible(false);
    XYPlot plot = style.plot(across, along);
    plot.setInsets(org.jfree.chart.ui.RectangleInsets.ZERO_INSETS);
    return plot;
  }

  private static String label(int number, String verdict) {
    return number + " " + verdict;
  }

  private static void legend(
      XYPlot plot, ChartStyle style, int height, double scale, OptionalDouble arcsecPerPixel) {
    String pixels =
        arcsecPerPixel.isEmpty()
            ? ""
            : ", " + Numbers.coarse(2 / arcsecPerPixel.getAsDouble()) + " pixels";
    double y = height - 16;
    plot.addAnnotation(
        DataLabels.beside(style.font())
            .add(4, y, 0, 5, DataLabels.Anchor.START, "left: from the guide log", Ink.DEC.color())
            .add(190, y, 0, 5, DataLabels.Anchor.START, "right: measured", Ink.RA.color())
            .add(
                330 + 2 * scale,
                y,
                8,
                5,
                DataLabels.Anchor.START,
                "2 arcsec" + pixels + "; outlines at half maximum, north up, east left",
                Ink.QUIET.color()));
    plot.addAnnotation(
        DataPath.stroked(
            Paths.segment(330, y, 330 + 2 * scale, y), Ink.QUIET.color(), ChartStyle.LINE));
  }

  private static double longest(List<Exposure> exposures) {
    double longest = 0;
    for (Exposure e : exposures) {
      if (e.predictedMajorFwhmArcsec() != null) {
        longest = Math.max(longest, e.predictedMajorFwhmArcsec() / 2);
      }
      if (width(e) > 0) {
        longest = Math.max(longest, width(e) * Math.sqrt(e.measuredElongation().value()) / 2);
      }
    }
    return longest;
  }

  /** Measured width [arcsec]; 0 when it is not known. */
  private static double width(Exposure e) {
    return e.measuredElongation() == null || e.measuredFwhmArcsec() == null
        ? 0
        : e.measuredFwhmArcsec();
  }

  private static void append(
      Path2D all, double x, double y, double major, double minor, Double angle) {
    // East is left: the page's x runs the other way.
    AffineTransform place = new AffineTransform(-1, 0, 0, 1, x, y);
    Path2D ellipse = Paths.ellipse(major, minor, angle == null ? 0 : angle);
    all.append(ellipse.getPathIterator(place), false);
  }

  private static String words(List<Exposure> known, List<Exposure> all) {
    double worst =
        known.stream()
            .map(Exposure::measuredElongation)
            .filter(e -> e != null)
            .mapToDouble(Estimate::value)
            .max()
            .orElse(
                known.stream()
                    .map(Exposure::predictedElongation)
                    .filter(e -> e != null)
                    .mapToDouble(Estimate::value)
                    .max()
                    .orElse(1));
    long trailed =
        IntStream.range(0, known.size())
            .filter(i -> known.get(i).verdict().equals("trailed"))
            .count();
    return "Star footprints of "
        + known.size()
        + " of "
        + all.size()
        + " exposures, "
        + trailed
        + " of them trailed; the longest is "
        + Numbers.plain(worst)
        + " times as long as wide. The table below has every figure.";
  }
}
