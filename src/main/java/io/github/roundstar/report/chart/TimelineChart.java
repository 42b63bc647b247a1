package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Band;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunTrace;
import java.awt.BasicStroke;
import java.awt.geom.Rectangle2D;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** The night at a glance: offsets of both axes as envelopes, and below what happened when. */
public final class TimelineChart {
  private static final int LANE_HEIGHT = 106;
  private static final int ROW_HEIGHT = 19;
  private static final int BELOW = 42;
  private static final int EXPOSURE_HEIGHT = 26;
  private static final int GAP = 32;

  /**
   * Beyond so many RMS a single frame is drawn at the edge, so that it does not flatten the rest.
   */
  private static final double MOST_RMS = 8;

  /** As long as the farthest frame is not so many times farther, all is shown. */
  private static final double WORTH_CUTTING = 2;

  private static final BasicStroke RA_STROKE = ChartStyle.stroke(1.3f);
  private static final BasicStroke DEC_STROKE = ChartStyle.stroke(1.3f, 5, 2);

  private TimelineChart() {}

  /**
   * Draws it; empty without runs.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(NightResult result, NightEvidence evidence)
      throws ChartsUnavailable {
    if (evidence.timeline().isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    Svg wide = draw(style, Sheet.WIDE, "night", result, evidence);
    return Optional.of(
        wide.orNarrower(draw(style, Sheet.MEDIUM, "night-medium", result, evidence))
            .orNarrower(draw(style, Sheet.NARROW, "night-narrow", result, evidence))
            .with(
                TimelineTable.of(TimeScale.of(result, evidence, Sheet.WIDE), evidence.timeline())));
  }

  private static Svg draw(
      ChartStyle style, int width, String id, NightResult result, NightEvidence whole) {
    NightEvidence evidence = width == Sheet.WIDE ? whole : thinned(whole, width);
    TimeScale time = TimeScale.of(result, evidence, width);
    ListedAxis horizontal = time.axis(style);
    double reach = reach(result, whole);
    CombinedDomainXYPlot all = new CombinedDomainXYPlot(horizontal);
    all.setGap(GAP);
    all.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 2, 2, 14));
    boolean narrow = width == Sheet.NARROW;
    all.add(
        lane(style, narrow, horizontal, evidence, reach, RunTrace::ra, Ink.RA, RA_STROKE),
        LANE_HEIGHT);
    all.add(
        lane(style, narrow, horizontal, evidence, reach, RunTrace::dec, Ink.DEC, DEC_STROKE),
        LANE_HEIGHT);
    MarksLane marks = new MarksLane(style, time, evidence.timeline());
    int marksHeight = marks.rows() * ROW_HEIGHT;
    all.add(marks.plot(), marksHeight);
    int height = ChartStyle.HEADROOM + 2 * GAP + 2 * LANE_HEIGHT + marksHeight + BELOW;
    if (evidence.exposures().filter(e -> !e.spans().isEmpty()).isPresent()) {
      all.add(ExposureLane.plot(style, evidence.exposures().get().spans()), EXPOSURE_HEIGHT);
      height += GAP + EXPOSURE_HEIGHT;
    }
    return style.draw(
        all,
        new Sheet(
            id,
            width,
            height,
            "Timeline of the night: medians as lines, from least to greatest offset as bands",
            words(whole, reach)),
        drawn -> data(time, drawn, reach));
  }

  /** One column for every two pixels, of the runs by their share of the time. */
  private static NightEvidence thinned(NightEvidence evidence, int width) {
    int columns = evidence.timeline().stream().mapToInt(run -> run.ra().size()).sum();
    double share = Math.min(1, width / 2.0 / Math.max(1, columns));
    return evidence.withTimeline(
        evidence.timeline().stream()
            .map(
                run ->
                    new RunTrace(
                        run.run(),
                        run.startSeconds(),
                        run.endSeconds(),
                        run.ra().thinned((int) Math.max(4, share * run.ra().size())),
                        run.dec().thinned((int) Math.max(4, share * run.dec().size())),
                        run.marks()))
            .toList());
  }

  /** Places of the two lanes, so that the page's script can read values off them. */
  private static Map<String, String> data(TimeScale time, PlotRenderingInfo drawn, double reach) {
    Rectangle2D ra = drawn.getSubplotInfo(0).getDataArea();
    Rectangle2D dec = drawn.getSubplotInfo(1).getDataArea();
    Map<String, String> data = time.data(ra.getMinX(), ra.getMaxX());
    data.put(
        "lanes",
        "[" + lane("RA", Ink.RA, ra, reach) + "," + lane("Dec", Ink.DEC, dec, reach) + "]");
    return data;
  }

  private static String lane(String name, Ink ink, Rectangle2D area, double reach) {
    return String.format(
        Locale.ROOT,
        "{\"name\":\"%s\",\"colour\":\"%s\",\"top\":%s,\"bottom\":%s,\"low\":%s,\"high\":%s}",
        name,
        ink.variableName(),
        SvgStep.decimals(area.getMinY()),
        SvgStep.decimals(area.getMaxY()),
        SvgStep.decimals(-reach),
        SvgStep.decimals(reach));
  }

  private static XYPlot lane(
      ChartStyle style,
      boolean narrow,
      ListedAxis horizontal,
      NightEvidence evidence,
      double reach,
      Function<RunTrace, Band> side,
      Ink ink,
      BasicStroke stroke) {
    ListedAxis vertical =
        style.vertical(new ListedAxis(-reach, reach, Ticks.linear(-reach, reach, 6)));
    XYPlot plot = style.plot(null, vertical);
    String what = ink == Ink.RA ? "RA offset, arcsec" : "Dec offset, arcsec";
    String name = new Ways(evidence.sense()).up(ink, what);
    style.rules(plot, horizontal, vertical, name, ink);
    if (evidence.timeline().stream().allMatch(run -> side.apply(run).size() == 0)) {
      double middle = (horizontal.getLowerBound() + horizontal.getUpperBound()) / 2;
      plot.addAnnotation(
          DataLabels.beside(style.font())
              .add(
                  middle,
                  0,
                  0,
                  5,
                  DataLabels.Anchor.MIDDLE,
                  "no usable frames",
                  Ink.QUIET.color()));
    }
    Extent extent = new Extent();
    evidence.timeline().forEach(run -> extent.addY(side.apply(run)));
    if (extent.reach() > reach) {
      plot.addAnnotation(beyond(style, narrow, horizontal, vertical, extent.reach()));
    }
    for (RunTrace run : evidence.timeline()) {
      Band band = side.apply(run);
      plot.addAnnotation(DataPath.filled(Paths.outline(band), ink.color(0.28)));
      plot.addAnnotation(DataPath.stroked(Paths.middle(band), ink.color(), stroke));
    }
    return plot;
  }

  private static DataLabels beyond(
      ChartStyle style,
      boolean narrow,
      ListedAxis horizontal,
      ListedAxis vertical,
      double farthest) {
    String edge = Numbers.coarse(vertical.getUpperBound());
    String note =
        narrow
            ? "cut at " + edge + " of " + Numbers.coarse(farthest)
            : "beyond " + edge + " arcsec: drawn at the edge; farthest " + Numbers.coarse(farthest);
    return DataLabels.beside(style.font())
        .add(
            horizontal.getUpperBound(),
            vertical.getUpperBound(),
            0,
            -9,
            DataLabels.Anchor.END,
            note,
            Ink.QUIET.color());
  }

  private static double reach(NightResult result, NightEvidence evidence) {
    Extent extent = new Extent();
    evidence.timeline().forEach(run -> extent.addY(run.ra()).addY(run.dec()));
    double reach = Math.max(extent.reach() * 1.04, 0.1);
    Guided guided = result.night().guided();
    double largest =
        guided == null ? 0 : Math.max(guided.ra().rmsArcsec(), guided.dec().rmsArcsec());
    double most = MOST_RMS * largest;
    return largest > 0 && reach > WORTH_CUTTING * most ? most : reach;
  }

  private static String words(NightEvidence evidence, double reach) {
    Extent ra = new Extent();
    Extent dec = new Extent();
    evidence.timeline().forEach(run -> ra.addY(run.ra()));
    evidence.timeline().forEach(run -> dec.addY(run.dec()));
    String runs = Numbers.counted(evidence.timeline().size(), "run", "runs");
    String cut =
        Math.max(ra.reach(), dec.reach()) > reach
            ? " Offsets beyond " + Numbers.coarse(reach) + " arcsec are drawn at the edge."
            : "";
    return "Offsets of the guide star against time, "
        + runs
        + ". "
        + span("RA", ra)
        + span("Dec", dec)
        + "Below, on rows of their own: runs and what happened in them."
        + exposures(evidence)
        + cut;
  }

  private static String exposures(NightEvidence evidence) {
    return evidence
        .exposures()
        .map(
            e ->
                " Lowest: "
                    + Numbers.counted(e.spans().size(), "exposure", "exposures")
                    + ", trailed ones high and filled, round ones low and hollow.")
        .orElse("");
  }

  private static String span(String axis, Extent extent) {
    return extent.isEmpty()
        ? axis + ": no usable frames. "
        : axis
            + " lies between "
            + Numbers.plain(extent.low())
            + " and "
            + Numbers.plain(extent.high())
            + " arcsec. ";
  }
}
