package io.github.roundstar.report.chart;

import io.github.roundstar.results.ExposureEvidence;
import java.awt.geom.Path2D;
import java.util.List;
import org.jfree.chart.plot.XYPlot;

/**
 * Exposures below a timeline, each as long as it took: round ones low and hollow, borderline ones
 * half as high and grey, trailed ones high and filled, those the log does not cover as a thin line.
 */
final class ExposureLane {
  private static final double ROUND = 0.22;
  private static final double BORDERLINE = 0.45;
  private static final double TRAILED = 0.9;

  private ExposureLane() {}

  static XYPlot plot(ChartStyle style, List<ExposureEvidence.Span> spans) {
    ListedAxis vertical =
        style.vertical(new ListedAxis(-0.1, 1, List.of(new Tick(0.35, "exposure"))));
    XYPlot plot = style.plot(null, vertical);
    plot.addAnnotation(
        DataPath.stroked(bars(spans, "round", ROUND), Ink.INK.color(), ChartStyle.HAIR));
    plot.addAnnotation(
        DataPath.filled(bars(spans, "borderline", BORDERLINE), Ink.QUIET.color(0.5)));
    plot.addAnnotation(DataPath.filled(bars(spans, "trailed", TRAILED), Ink.INK.color()));
    plot.addAnnotation(
        DataPath.stroked(bars(spans, "not covered", 0), Ink.QUIET.color(), ChartStyle.THIN_DASHED));
    return plot;
  }

  private static Path2D bars(List<ExposureEvidence.Span> spans, String verdict, double height) {
    Path2D bars = new Path2D.Double();
    for (ExposureEvidence.Span span : spans) {
      if (span.verdict().equals(verdict)) {
        bars.append(Paths.box(span.startSeconds(), 0, span.endSeconds(), height), false);
      }
    }
    return bars;
  }
}
