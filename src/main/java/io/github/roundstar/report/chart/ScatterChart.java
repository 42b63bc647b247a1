package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.OffsetCloud;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** Where the star was about its mean place, both scales equal, north up and east left. */
public final class ScatterChart {
  private static final int WIDTH = 460;
  private static final int LEFT = 44;
  private static final int BOTTOM = 44;
  private static final int SIDE = WIDTH - LEFT - 16;

  /** A plane normal cloud has 95 % within so many standard deviations: sqrt(-2 ln 0.05). */
  private static final double TO_95 = 2.4477;

  /** Points farther out than this many times the major RMS are drawn at the edge. */
  private static final double MOST_RMS = 7;

  private ScatterChart() {}

  /**
   * Draws it; empty without points.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(NightEvidence evidence) throws ChartsUnavailable {
    OffsetCloud cloud = evidence.offsets();
    if (cloud.points().size() == 0) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    OptionalDouble pixel = evidence.imagingArcsecPerPixel();
    double reach = reach(cloud, pixel);
    List<Tick> ticks = Ticks.linear(-reach, reach, 9);
    Ways ways = new Ways(evidence.sense());
    ListedAxis east =
        style.horizontal(new ListedAxis(-reach, reach, ticks), ways.left("RA offset, arcsec"));
    east.setInverted(true);
    ListedAxis north = style.vertical(new ListedAxis(-reach, reach, ticks));
    XYPlot plot = style.plot(east, north);
    plot.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 0, 0, 0));
    plot.setFixedRangeAxisSpace(space(LEFT, WIDTH - LEFT - SIDE));
    AxisSpace below = new AxisSpace();
    below.setBottom(BOTTOM);
    plot.setFixedDomainAxisSpace(below);
    style.rules(plot, east, north, ways.up(Ink.DEC, "Dec offset, arcsec"), Ink.QUIET);
    plot.addAnnotation(
        DataPath.stroked(
            Paths.dots(cloud.points()),
            Ink.INK.color(cloud.points().size() > 1500 ? 0.3 : 0.45),
            ChartStyle.stroke(2.6f)));
    shapes(plot, style, cloud, pixel, reach, ways);
    int height = ChartStyle.HEADROOM + SIDE + BOTTOM;
    return Optional.of(
        style
            .draw(
                plot,
                new Sheet(
                    "cloud", WIDTH, height, "Where the star was", words(cloud, pixel, reach, ways)))
            .with(table(cloud)));
  }

  private static AxisSpace space(double left, double right) {
    AxisSpace space = new AxisSpace();
    space.setLeft(left);
    space.setRight(right);
    return space;
  }

  private static void shapes(
      XYPlot plot,
      ChartStyle style,
      OffsetCloud cloud,
      OptionalDouble pixel,
      double reach,
      Ways ways) {
    Color strong = Ink.RA.color();
    DataLabels labels = DataLabels.beside(style.font());
    if (cloud.majorArcsec() > 0) {
      Path2D one = Paths.ellipse(cloud.majorArcsec(), cloud.minorArcsec(), cloud.angleDeg());
      Path2D most =
          Paths.ellipse(TO_95 * cloud.majorArcsec(), TO_95 * cloud.minorArcsec(), cloud.angleDeg());
      plot.addAnnotation(DataPath.stroked(one, strong, ChartStyle.LINE));
      plot.addAnnotation(DataPath.stroked(most, strong, ChartStyle.THIN_DASHED));
      corner(plot, labels, one, reach, 1, 1, "1 standard deviation", strong);
      corner(plot, labels, most, reach, -1, 1, "95 % of a normal cloud", strong);
    }
    if (pixel.isPresent() && pixel.getAsDouble() < 1.6 * reach) {
      double half = pixel.getAsDouble() / 2;
      Path2D box = Paths.box(-half, -half, half, half);
      plot.addAnnotation(DataPath.stroked(box, Ink.DEC.color(), ChartStyle.stroke(1.8f)));
      corner(plot, labels, box, reach, -1, -1, "1 imaging pixel", Ink.DEC.color());
    }
    if (farthest(cloud) > reach) {
      labels.add(
          reach,
          -reach,
          0,
          -6,
          DataLabels.Anchor.START,
          "farther out: drawn at the edge",
          Ink.QUIET.color());
    }
    if (ways.known(Ink.DEC)) {
      labels.add(0, reach, 0, 14, DataLabels.Anchor.MIDDLE, "N", Ink.QUIET.color());
    }
    if (ways.known(Ink.RA)) {
      labels.add(reach, 0, 6, 5, DataLabels.Anchor.START, "E", Ink.QUIET.color());
    }
    plot.addAnnotation(labels);
  }

  /** Names a shape in the corner to the east (+1 or -1) and north, with a hair line to it. */
  private static void corner(
      XYPlot plot,
      DataLabels labels,
      Path2D shape,
      double reach,
      int east,
      int north,
      String text,
      Color color) {
    double[] to = Paths.farthest(shape, east, north);
    plot.addAnnotation(
        DataPath.stroked(
            Paths.segment(0.7 * east * reach, 0.89 * north * reach, to[0], to[1]),
            color,
            ChartStyle.HAIR));
    labels.add(
        east * reach,
        north * reach,
        0,
        north > 0 ? 14 : -6,
        east > 0 ? DataLabels.Anchor.START : DataLabels.Anchor.END,
        text,
        color);
  }

  private static double farthest(OffsetCloud cloud) {
    return new Extent().addX(cloud.points()).addY(cloud.points()).reach();
  }

  private static double reach(OffsetCloud cloud, OptionalDouble pixel) {
    double farthest = farthest(cloud);
    double shown =
        cloud.majorArcsec() > 0 ? Math.min(farthest, MOST_RMS * cloud.majorArcsec()) : farthest;
    double least = Math.max(0.1, pixel.orElse(0) * 0.75);
    return 1.06 * Math.max(least, Math.max(shown, TO_95 * cloud.majorArcsec()));
  }

  private static String words(OffsetCloud cloud, OptionalDouble pixel, double reach, Ways ways) {
    return "Offsets of "
        + Numbers.counted(cloud.frames(), "frame", "frames")
        + " about each run's mean, "
        + (ways.allKnown() ? "north up and east left" : "its directions not told by the log")
        + ", equal scales. Standard deviation "
        + Numbers.plain(cloud.majorArcsec())
        + " arcsec along the longest direction"
        + (ways.allKnown()
            ? ", at position angle " + Numbers.fixed(cloud.angleDeg(), 0) + " degrees,"
            : "")
        + " and "
        + Numbers.plain(cloud.minorArcsec())
        + " arcsec across it."
        + (pixel.isPresent()
            ? " One imaging pixel is " + Numbers.plain(pixel.getAsDouble()) + " arcsec."
            : "")
        + (farthest(cloud) > reach ? " Frames farther out are drawn at the edge." : "");
  }

  private static ChartTable table(OffsetCloud cloud) {
    double[] distances = new double[cloud.points().size()];
    for (int i = 0; i < distances.length; i++) {
      distances[i] = Math.hypot(cloud.points().x(i), cloud.points().y(i));
    }
    java.util.Arrays.sort(distances);
    return ChartTable.rows(
        "Share of the points drawn that lie within a distance of the mean place.",
        List.of("points, %", "within, arcsec"),
        java.util.stream.IntStream.of(10, 25, 50, 75, 90, 95, 99, 100)
            .mapToObj(
                percent ->
                    List.of(
                        String.valueOf(percent),
                        Numbers.plain(distances[(distances.length * percent - 1) / 100])))
            .toList());
  }
}
