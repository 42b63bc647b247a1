package io.github.roundstar.report.chart;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.MotionTrace;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import java.awt.BasicStroke;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.XYPlot;

/** What the mount did in one axis by itself, run by run, with the fitted drift. */
public final class MotionChart {
  private static final int HEIGHT = 380;

  /** Widths of a run's label with drift, without it, and of its bare number [px]. */
  private static final int LONG_LABEL = 290;

  private static final int SHORT_LABEL = 50;

  private static final int NUMBER = 14;

  private MotionChart() {}

  /**
   * Right ascension; empty without points.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> ra(NightResult result, NightEvidence evidence)
      throws ChartsUnavailable {
    return draw(result, evidence, evidence.raMotion(), true);
  }

  /**
   * Declination; empty without points.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> dec(NightResult result, NightEvidence evidence)
      throws ChartsUnavailable {
    return draw(result, evidence, evidence.decMotion(), false);
  }

  private static Optional<Svg> draw(
      NightResult result, NightEvidence evidence, List<MotionTrace> traces, boolean ra)
      throws ChartsUnavailable {
    Extent extent = new Extent();
    traces.forEach(trace -> extent.addY(trace.motion()).addY(trace.drift()));
    if (extent.isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    TimeScale time = TimeScale.of(result, evidence, Sheet.HALF);
    ListedAxis horizontal = time.axis(style);
    Extent shown = extent.padded(0.1, 0.5);
    ListedAxis vertical =
        style.vertical(
            new ListedAxis(shown.low(), shown.high(), Ticks.linear(shown.low(), shown.high(), 6)));
    XYPlot plot = style.plot(horizontal, vertical);
    Ink ink = ra ? Ink.RA : Ink.DEC;
    Ways ways = new Ways(evidence.sense());
    String name =
        ways.up(ink, ra ? "RA of the mount on the sky, arcsec" : "Dec of the mount, arcsec");
    style.rules(plot, horizontal, vertical, name, ink);
    traces.forEach(trace -> trace(plot, trace, ink));
    plot.addAnnotation(labels(style, time, traces, vertical.getUpperBound()));
    String title = ra ? "What the mount did in RA" : "What the mount did in Dec";
    return Optional.of(
        style
            .draw(
                plot,
                new Sheet(
                    ra ? "ra" : "dec",
                    Sheet.HALF,
                    HEIGHT,
                    title,
                    words(traces, extent, ways.upInWords(ink))))
            .with(table(time, traces)));
  }

  private static void trace(XYPlot plot, MotionTrace trace, Ink ink) {
    BasicStroke stroke = ink == Ink.RA ? ChartStyle.LINE : ChartStyle.DASHED;
    plot.addAnnotation(DataPath.stroked(Paths.line(trace.motion()), ink.color(), stroke));
    Estimate drift = trace.driftArcsecPerMinute();
    boolean sure = drift != null && !drift.covers(0);
    plot.addAnnotation(
        DataPath.stroked(
            Paths.line(trace.drift()),
            sure ? Ink.INK.color() : Ink.QUIET.color(),
            sure ? ChartStyle.stroke(1.2f) : ChartStyle.THIN_DASHED));
  }

  /** Number and drift of each run above its start, as far as they fit. */
  private static DataLabels labels(
      ChartStyle style, TimeScale time, List<MotionTrace> traces, double top) {
    DataLabels labels = DataLabels.beside(style.font());
    for (MotionTrace trace : traces) {
      int last = trace.motion().size() - 1;
      if (last < 0) {
        continue;
      }
      double start = trace.motion().x(0);
      double room = time.pixels(trace.motion().x(last) - start);
      if (room > NUMBER) {
        labels.add(start, top, 0, 14, DataLabels.Anchor.START, label(trace, room), Ink.INK.color());
      }
    }
    return labels;
  }

  private static String label(MotionTrace trace, double room) {
    if (room < SHORT_LABEL) {
      return String.valueOf(trace.run());
    }
    String run = "run " + trace.run();
    return trace.driftArcsecPerMinute() == null || room < LONG_LABEL
        ? run
        : run + ": drift " + Numbers.both(trace.driftArcsecPerMinute()) + " arcsec/min";
  }

  private static String words(List<MotionTrace> traces, Extent extent, String up) {
    StringBuilder text =
        new StringBuilder("Motion of the mount with the corrections taken out, ")
            .append(up)
            .append(", between ")
            .append(Numbers.plain(extent.low()))
            .append(" and ")
            .append(Numbers.plain(extent.high()))
            .append(" arcsec.");
    for (MotionTrace trace : traces) {
      if (trace.driftArcsecPerMinute() != null) {
        text.append(" Run ")
            .append(trace.run())
            .append(" drifts by ")
            .append(Numbers.both(trace.driftArcsecPerMinute()))
            .append(" arcsec per minute.");
      }
    }
    return text.toString();
  }

  private static ChartTable table(TimeScale time, List<MotionTrace> traces) {
    ChartTable.Spans spans = new ChartTable.Spans(time.name(), time::text, Numbers::plain);
    traces.forEach(trace -> spans.line("motion, arcsec", trace.motion()));
    return spans.table();
  }
}
