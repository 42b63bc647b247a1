package io.github.roundstar.report.chart;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.RunTrace;
import io.github.roundstar.results.SeeingRun;
import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** Noise floor and scatter of the runs, against time with the flips, and against airmass. */
public final class AirChart {
  private static final int HEIGHT = 320;
  private static final int RIGHT = 150;
  private static final BasicStroke SCATTER = ChartStyle.stroke(2.4f);
  private static final BasicStroke SCATTER_DEC = ChartStyle.stroke(2.4f, 7, 4);
  private static final BasicStroke FLOOR = ChartStyle.stroke(1.2f);
  private static final BasicStroke FLOOR_DEC = ChartStyle.stroke(1.2f, 4, 3);

  /** Half width of a run's marks [airmass]; the airmass is rounded to a tenth. */
  private static final double MARK = 0.04;

  private record Span(RunResult run, double from, double to) {}

  private AirChart() {}

  /**
   * Against time; empty when no run has a figure.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> byTime(NightResult result, NightEvidence evidence)
      throws ChartsUnavailable {
    List<Span> spans = new ArrayList<>();
    for (RunTrace trace : evidence.timeline()) {
      result.runs().stream()
          .filter(run -> run.id() == trace.run() && known(run))
          .forEach(run -> spans.add(new Span(run, trace.startSeconds(), trace.endSeconds())));
    }
    if (spans.isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    ListedAxis horizontal = TimeScale.of(result, evidence, Sheet.HALF).axis(style);
    return Optional.of(
        draw(style, horizontal, spans, "air-time", "Noise floor and scatter against time", true));
  }

  /**
   * Against airmass; empty unless runs stood at two or more.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> byAirmass(NightResult result) throws ChartsUnavailable {
    List<Span> spans = new ArrayList<>();
    Extent extent = new Extent();
    for (SeeingRun air : result.seeing().runs()) {
      for (RunResult run : result.runs()) {
        if (air.airmass() != null && run.id() == air.run() && known(run)) {
          spans.add(new Span(run, air.airmass() - MARK, air.airmass() + MARK));
          extent.add(air.airmass());
        }
      }
    }
    if (spans.stream().mapToDouble(Span::from).distinct().count() < 2) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    Extent wide = extent.padded(0.15, 0.3);
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(wide.low(), wide.high(), Ticks.linear(wide.low(), wide.high(), 6)),
            "airmass (1 in the zenith, 2 at an altitude of 30 degrees)");
    return Optional.of(
        draw(
            style,
            horizontal,
            spans,
            "air-mass",
            "Noise floor and scatter against airmass",
            false));
  }

  private static boolean known(RunResult run) {
    return run.guided() != null || floor(run, NoiseFloor::ra).isPresent();
  }

  private static Svg draw(
      ChartStyle style,
      ListedAxis horizontal,
      List<Span> spans,
      String id,
      String title,
      boolean flips) {
    Extent up = new Extent().add(0);
    for (Span span : spans) {
      floor(span.run, NoiseFloor::ra).ifPresent(e -> up.add(e.hi95()));
      floor(span.run, NoiseFloor::dec).ifPresent(e -> up.add(e.hi95()));
      if (span.run.guided() != null) {
        up.add(span.run.guided().ra().rmsArcsec()).add(span.run.guided().dec().rmsArcsec());
      }
    }
    double top = up.padded(0.2, 0.2).high();
    ListedAxis vertical = style.vertical(new ListedAxis(0, top, Ticks.linear(0, top, 5)));
    XYPlot plot = style.plot(horizontal, vertical);
    plot.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 2, 2, RIGHT));
    style.rules(plot, horizontal, vertical, "arcsec, one axis", Ink.INK);
    spans.forEach(span -> marks(plot, span));
    DataLabels labels = DataLabels.beside(style.font());
    if (flips) {
      flips(plot, labels, spans, top);
    } else {
      spans.forEach(
          span ->
              labels.add(
                  (span.from + span.to) / 2,
                  top,
                  0,
                  12,
                  DataLabels.Anchor.MIDDLE,
                  "run " + span.run.id(),
                  Ink.QUIET.color()));
    }
    plot.addAnnotation(labels);
    plot.addAnnotation(
        new LineKey(style.font())
            .line("RMS, RA", Ink.RA, SCATTER)
            .line("RMS, Dec", Ink.DEC, SCATTER_DEC)
            .line("noise floor, RA", Ink.RA, FLOOR)
            .line("noise floor, Dec", Ink.DEC, FLOOR_DEC));
    return style.draw(plot, new Sheet(id, Sheet.HALF, HEIGHT, title, words(spans)));
  }

  private static void marks(XYPlot plot, Span span) {
    if (span.run.guided() != null) {
      level(plot, span, span.run.guided().ra().rmsArcsec(), Ink.RA, SCATTER);
      level(plot, span, span.run.guided().dec().rmsArcsec(), Ink.DEC, SCATTER_DEC);
    }
    floor(span.run, NoiseFloor::ra).ifPresent(e -> floor(plot, span, e, Ink.RA, FLOOR, 0.35));
    floor(span.run, NoiseFloor::dec).ifPresent(e -> floor(plot, span, e, Ink.DEC, FLOOR_DEC, 0.65));
  }

  private static void level(XYPlot plot, Span span, double arcsec, Ink ink, BasicStroke stroke) {
    plot.addAnnotation(
        DataPath.stroked(Paths.segment(span.from, arcsec, span.to, arcsec), ink.color(), stroke));
  }

  /** A level with its interval as a stroke across it. */
  private static void floor(
      XYPlot plot, Span span, Estimate figure, Ink ink, BasicStroke stroke, double share) {
    level(plot, span, figure.value(), ink, stroke);
    double at = span.from + share * (span.to - span.from);
    plot.addAnnotation(
        DataPath.stroked(
            Paths.segment(at, figure.lo95(), at, figure.hi95()), ink.color(), ChartStyle.LINE));
  }

  /** Each side of the pier named where it begins, a hair line where the mount flipped. */
  private static void flips(XYPlot plot, DataLabels labels, List<Span> spans, double top) {
    for (int i = 0; i < spans.size(); i++) {
      Span span = spans.get(i);
      boolean first = i == 0 || spans.get(i - 1).run.pierSide() != span.run.pierSide();
      if (first && span.run.pierSide() != null) {
        String side = span.run.pierSide().name().toLowerCase(Locale.ROOT);
        labels.add(
            span.from, top, 4, 12, DataLabels.Anchor.START, "tube " + side, Ink.QUIET.color());
      }
      if (first && i > 0) {
        double between = (spans.get(i - 1).to + span.from) / 2;
        plot.addAnnotation(
            DataPath.stroked(
                Paths.segment(between, 0, between, top), Ink.QUIET.color(), ChartStyle.HAIR));
      }
    }
  }

  private static Optional<Estimate> floor(RunResult run, Function<NoiseFloor, Estimate> axis) {
    return Optional.ofNullable(run.noiseFloorArcsec()).map(axis);
  }

  private static String words(List<Span> spans) {
    StringBuilder text = new StringBuilder("Noise floor and guided scatter, run by run.");
    for (Span span : spans.subList(0, Math.min(12, spans.size()))) {
      text.append(" Run ").append(span.run.id());
      if (span.run.pierSide() != null) {
        text.append(", tube ").append(span.run.pierSide().name().toLowerCase(Locale.ROOT));
      }
      text.append(':');
      if (span.run.guided() != null) {
        text.append(" RMS ")
            .append(Numbers.plain(span.run.guided().ra().rmsArcsec()))
            .append(" in RA, ")
            .append(Numbers.plain(span.run.guided().dec().rmsArcsec()))
            .append(" in Dec;");
      }
      text.append(" noise floor ")
          .append(floor(span.run, NoiseFloor::ra).map(Numbers::both).orElse("not known"))
          .append(" in RA, ")
          .append(floor(span.run, NoiseFloor::dec).map(Numbers::both).orElse("not known"))
          .append(" in Dec.");
    }
    return text.append(" All in arcsec.").toString();
  }
}
