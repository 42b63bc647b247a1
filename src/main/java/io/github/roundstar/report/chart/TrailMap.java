package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.AxisTrace;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.plot.XYPlot;

/** The sensor with the trail that field rotation draws at each place, lengthened to be seen. */
public final class TrailMap {
  /** No sensor is taller, times its width; the chart of a wrong entry would have no end. */
  private static final double TALLEST = 4;

  private static final int WIDTH = 460;
  private static final int MARGIN = 44;
  private static final int COLUMNS = 9;

  /** Room for a line of words below the sensor [px]. */
  private static final int LABEL_ROOM = 26;

  /** A trail of a pixel, as a share of the distance between two of them: the same every night. */
  private static final double PIXEL = 0.45;

  /** The longest trail that has room, likewise; nights with longer ones say their own scale. */
  private static final double LONGEST = 0.9;

  private TrailMap() {}

  /**
   * Draws it; empty where the sensor or the axis is not known.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(AxisTrace trace) throws ChartsUnavailable {
    if (trace.sensor() == null || trace.sensor().turnDegrees() == 0) {
      return Optional.empty();
    }
    AxisTrace.Sensor sensor = trace.sensor();
    if (sensor.heightArcmin() > TALLEST * sensor.widthArcmin()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    double halfX = sensor.widthArcmin() / 2;
    double halfY = sensor.heightArcmin() / 2;
    double pad = sensor.widthArcmin() / COLUMNS / 2;
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(-halfX - pad, halfX + pad, Ticks.linear(-halfX, halfX, 7)),
            "from the middle of the sensor, arcmin");
    double below = pad + LABEL_ROOM * 2 * (halfX + pad) / (WIDTH - 2 * MARGIN);
    ListedAxis vertical =
        style.vertical(new ListedAxis(-halfY - below, halfY + pad, Ticks.linear(-halfY, halfY, 5)));
    XYPlot plot = style.plot(horizontal, vertical);
    AxisSpace side = new AxisSpace();
    side.setLeft(MARGIN);
    side.setRight(MARGIN);
    plot.setFixedRangeAxisSpace(side);
    AxisSpace foot = new AxisSpace();
    foot.setBottom(MARGIN);
    plot.setFixedDomainAxisSpace(foot);
    plot.addAnnotation(
        DataPath.stroked(
            Paths.box(-halfX, -halfY, halfX, halfY), Ink.QUIET.color(), ChartStyle.HAIR));
    plot.addAnnotation(DataPath.stroked(trails(sensor), Ink.INK.color(), ChartStyle.stroke(1.8f)));
    plot.addAnnotation(
        DataPath.stroked(
            Paths.segment(halfX - pixelArcmin(sensor), halfY + pad, halfX, halfY + pad),
            Ink.INK.color(),
            ChartStyle.stroke(1.8f)));
    plot.addAnnotation(labels(style, sensor, halfX, halfY, pad));
    double aspect = (2 * halfY + pad + below) / (2 * (halfX + pad));
    int height = (int) Math.round((WIDTH - 2 * MARGIN) * aspect) + ChartStyle.HEADROOM + MARGIN;
    return Optional.of(
        style
            .draw(plot, new Sheet("trails", WIDTH, height, "Trails on the sensor", words(sensor)))
            .with(table(sensor)));
  }

  /** A chord of the turn at every place of a grid, its middle there. */
  private static Path2D trails(AxisTrace.Sensor sensor) {
    double step = sensor.widthArcmin() / (COLUMNS - 1);
    int rows = Math.max(2, (int) Math.round(sensor.heightArcmin() / step) + 1);
    List<double[]> places = new ArrayList<>();
    for (int i = 0; i < COLUMNS; i++) {
      for (int j = 0; j < rows; j++) {
        double x = sensor.widthArcmin() * (i / (COLUMNS - 1.0) - 0.5);
        double y = sensor.heightArcmin() * (j / (rows - 1.0) - 0.5);
        places.add(new double[] {x, y});
      }
    }
    double scale = pixelArcmin(sensor) * pixelsPerArcmin(sensor) / 2;
    Path2D all = new Path2D.Double();
    for (double[] place : places) {
      double dx = -(place[1] - sensor.starYArcmin()) * scale;
      double dy = (place[0] - sensor.starXArcmin()) * scale;
      all.moveTo(place[0] - dx, place[1] - dy);
      all.lineTo(place[0] + dx, place[1] + dy);
    }
    return all;
  }

  /** How long a trail of one pixel is drawn [arcmin on the map]. */
  private static double pixelArcmin(AxisTrace.Sensor sensor) {
    double step = sensor.widthArcmin() / (COLUMNS - 1);
    return Math.min(PIXEL, LONGEST / Math.max(farthestPixels(sensor), 1e-9)) * step;
  }

  /** Pixels of trail per arcmin of distance from the guide star. */
  private static double pixelsPerArcmin(AxisTrace.Sensor sensor) {
    return 60 * Math.toRadians(Math.abs(sensor.turnDegrees())) / sensor.arcsecPerPixel();
  }

  private static DataLabels labels(
      ChartStyle style, AxisTrace.Sensor sensor, double halfX, double halfY, double pad) {
    DataLabels labels = DataLabels.beside(style.font());
    boolean inside =
        Math.abs(sensor.starXArcmin()) <= halfX && Math.abs(sensor.starYArcmin()) <= halfY;
    if (inside) {
      labels.add(
          sensor.starXArcmin(),
          sensor.starYArcmin(),
          6,
          sensor.starYArcmin() < 0 ? 22 : -10,
          DataLabels.Anchor.START,
          sensor.starKnown() ? "guide star" : "guide star put here",
          Ink.QUIET.color());
    }
    labels.add(
        halfX - pixelArcmin(sensor),
        halfY + pad,
        -6,
        4,
        DataLabels.Anchor.END,
        "1 pixel, " + Numbers.plain(sensor.arcsecPerPixel()) + " arcsec",
        Ink.QUIET.color());
    labels.add(
        -halfX,
        halfY + pad,
        0,
        -9,
        DataLabels.Anchor.START,
        "longest: " + Numbers.plain(farthestPixels(sensor)) + " pixels in a corner",
        Ink.INK.color());
    return labels;
  }

  private static double farthestPixels(AxisTrace.Sensor sensor) {
    double arcmin =
        Math.hypot(
            sensor.widthArcmin() / 2 + Math.abs(sensor.starXArcmin()),
            sensor.heightArcmin() / 2 + Math.abs(sensor.starYArcmin()));
    return arcmin * pixelsPerArcmin(sensor);
  }

  private static String words(AxisTrace.Sensor sensor) {
    return "The sensor, "
        + Numbers.plain(sensor.widthArcmin())
        + " by "
        + Numbers.plain(sensor.heightArcmin())
        + " arcmin. Stars trail about the guide star; in an exposure of "
        + Numbers.plain(sensor.exposureSeconds())
        + " s the longest trail, in the corner farthest from it, is "
        + Numbers.plain(farthestPixels(sensor))
        + " pixels. The trails are drawn longer than they are, to the scale of the bar.";
  }

  private static ChartTable table(AxisTrace.Sensor sensor) {
    List<List<String>> rows = new ArrayList<>();
    for (double up : new double[] {0.5, 0, -0.5}) {
      for (double right : new double[] {-0.5, 0, 0.5}) {
        double x = right * sensor.widthArcmin();
        double y = up * sensor.heightArcmin();
        double away = Math.hypot(x - sensor.starXArcmin(), y - sensor.starYArcmin());
        double trail = 60 * away * Math.toRadians(Math.abs(sensor.turnDegrees()));
        rows.add(List.of(Numbers.fixed(x, 1), Numbers.fixed(y, 1), Numbers.plain(trail)));
      }
    }
    return ChartTable.rows(
        "Middle, edges and corners of the sensor.",
        List.of("right, arcmin", "up, arcmin", "trail, arcsec"),
        rows);
  }
}
