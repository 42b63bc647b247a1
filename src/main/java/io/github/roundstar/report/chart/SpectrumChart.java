package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Sources;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.SpectrumTrace;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.XYPlot;

/** How much of the mount's motion in right ascension repeats at which period. */
public final class SpectrumChart {
  private static final int HEIGHT = 380;

  /** Left and right of the plot [px]. */
  private static final int EDGES = 60;

  private static final int MOST_LABELS = 8;

  /** Smaller amplitudes are drawn at the lower edge [arcsec]. */
  private static final double LEAST = 0.001;

  private SpectrumChart() {}

  /**
   * Draws it; empty without a spectrum.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(NightEvidence evidence) throws ChartsUnavailable {
    Optional<SpectrumTrace> given = evidence.spectrum().filter(s -> s.amplitude().size() > 1);
    if (given.isEmpty()) {
      return Optional.empty();
    }
    SpectrumTrace spectrum = given.get();
    ChartStyle style = ChartStyle.load();
    ListedAxis horizontal = periods(style, spectrum.amplitude());
    Extent shown = shown(spectrum);
    ListedAxis vertical =
        style.vertical(
            new ListedAxis(
                shown.low(), shown.high(), Ticks.decades(shown.low(), shown.high(), HEIGHT - 70)));
    XYPlot plot = style.plot(horizontal, vertical);
    Polyline limit = logarithmic(spectrum.onePercent());
    Polyline curve = logarithmic(spectrum.amplitude());
    String name = name(new Extent().addY(curve).low() < shown.low());
    style.rules(plot, horizontal, vertical, name, Ink.RA);
    plot.addAnnotation(DataPath.filled(Paths.below(limit, shown.low()), Ink.QUIET.color(0.1)));
    plot.addAnnotation(DataPath.stroked(Paths.line(curve), Ink.RA.color(), ChartStyle.LINE));
    plot.addAnnotation(
        DataPath.stroked(Paths.line(limit), Ink.INK.color(), ChartStyle.THIN_DASHED));
    plot.addAnnotation(labels(style, spectrum, limit, curve));
    return Optional.of(
        style
            .draw(
                plot,
                new Sheet(
                    "spectrum", Sheet.HALF, HEIGHT, "Amplitude against period", words(spectrum)))
            .with(table(curve, limit)));
  }

  /**
   * Name of a logarithmic axis of amplitudes.
   *
   * @param below whether the curve goes on below the plot
   */
  static String name(boolean below) {
    return "amplitude at the axis, arcsec (logarithmic scale"
        + (below ? "; smaller ones end at the lower edge)" : ")");
  }

  private static ListedAxis periods(ChartStyle style, Polyline amplitude) {
    double low = amplitude.x(0);
    double high = amplitude.x(amplitude.size() - 1);
    double margin = Math.log10(high / low) * 0.01 + 1e-3;
    return style.horizontal(
        new ListedAxis(
            Math.log10(low) - margin,
            Math.log10(high) + margin,
            Ticks.periods(low, high, Sheet.HALF - EDGES)),
        "period");
  }

  /** From well below the limit of chance to room for names above the peaks, in logarithms. */
  private static Extent shown(SpectrumTrace spectrum) {
    Extent limit = new Extent().addY(spectrum.onePercent());
    Extent peaks = new Extent().addY(spectrum.amplitude()).addY(spectrum.onePercent());
    spectrum.components().forEach(c -> peaks.add(c.amplitudeArcsecAxis().value()));
    double high = Math.log10(Math.max(peaks.high(), LEAST));
    double low = Math.min(Math.log10(Math.max(limit.low(), LEAST)) - 0.7, high - 1);
    return new Extent().add(low).add(high + 0.22 * (high - low));
  }

  private static DataLabels labels(
      ChartStyle style, SpectrumTrace spectrum, Polyline limit, Polyline curve) {
    DataLabels labels = DataLabels.above(style.font(), curve);
    List<Component> shown =
        spectrum.components().subList(0, Math.min(MOST_LABELS, spectrum.components().size()));
    for (Component component : shown) {
      double period = component.periodSeconds().value();
      labels.add(
          Math.log10(period),
          Math.log10(component.amplitudeArcsecAxis().value()),
          0,
          -7,
          DataLabels.Anchor.MIDDLE,
          Sources.of(component.source()) + ", " + Times.shortPeriod(period),
          Ink.INK.color());
    }
    if (limit.size() > 0) {
      labels.add(
          limit.x(0),
          limit.y(0),
          4,
          -7,
          DataLabels.Anchor.START,
          "chance reaches this in 1 night of 100",
          Ink.INK.color());
    }
    return labels;
  }

  private static Polyline logarithmic(Polyline line) {
    double[] x = new double[line.size()];
    double[] y = new double[line.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = Math.log10(line.x(i));
      y[i] = Math.log10(Math.max(line.y(i), LEAST));
    }
    return Polyline.of(x, y);
  }

  private static String words(SpectrumTrace spectrum) {
    if (spectrum.components().isEmpty()) {
      return "Amplitude of the mount's motion in right ascension against period. Nothing stands out"
          + " from wander and noise.";
    }
    StringBuilder text =
        new StringBuilder("Amplitude of the mount's motion in right ascension against period.");
    for (Component component : spectrum.components()) {
      text.append(' ')
          .append(Sources.of(component.source()))
          .append(": ")
          .append(Times.period(component.periodSeconds().value()))
          .append(", ")
          .append(Numbers.value(component.amplitudeArcsecAxis()))
          .append(" arcsec.");
    }
    return text.toString();
  }

  private static ChartTable table(Polyline curve, Polyline limit) {
    return new ChartTable.Spans(
            "period",
            logarithm -> Times.shortPeriod(Math.pow(10, logarithm)),
            logarithm -> Numbers.plain(Math.pow(10, logarithm)))
        .line("amplitude at the axis, arcsec", curve)
        .line("chance reaches this in 1 night of 100, arcsec", limit)
        .table();
  }
}
