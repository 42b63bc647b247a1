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
  private static final int MOST_LABELS = 8;

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
    double top = top(spectrum);
    ListedAxis vertical = style.vertical(new ListedAxis(0, top, Ticks.linear(0, top, 5)));
    XYPlot plot = style.plot(horizontal, vertical);
    style.rules(plot, horizontal, vertical, "amplitude at the axis, arcsec", Ink.RA);
    Polyline limit = below(top, logarithmic(spectrum.onePercent()));
    plot.addAnnotation(
        DataPath.stroked(Paths.line(limit), Ink.QUIET.color(), ChartStyle.THIN_DASHED));
    plot.addAnnotation(
        DataPath.stroked(
            Paths.line(logarithmic(spectrum.amplitude())), Ink.RA.color(), ChartStyle.LINE));
    plot.addAnnotation(labels(style, spectrum, limit));
    return Optional.of(
        style.draw(
            plot,
            new Sheet(
                "spectrum", Sheet.WIDE, HEIGHT, "Amplitude against period", words(spectrum))));
  }

  private static ListedAxis periods(ChartStyle style, Polyline amplitude) {
    double low = amplitude.x(0);
    double high = amplitude.x(amplitude.size() - 1);
    double margin = Math.log10(high / low) * 0.01 + 1e-3;
    return style.horizontal(
        new ListedAxis(
            Math.log10(low) - margin, Math.log10(high) + margin, Ticks.periods(low, high)),
        "period");
  }

  private static double top(SpectrumTrace spectrum) {
    Extent extent = new Extent().add(0).addY(spectrum.amplitude());
    spectrum.components().forEach(c -> extent.add(c.amplitudeArcsecAxis().value()));
    return Math.max(extent.high() * 1.18, 0.1);
  }

  private static DataLabels labels(ChartStyle style, SpectrumTrace spectrum, Polyline limit) {
    DataLabels labels = DataLabels.above(style.font());
    List<Component> shown =
        spectrum.components().subList(0, Math.min(MOST_LABELS, spectrum.components().size()));
    for (Component component : shown) {
      double period = component.periodSeconds().value();
      labels.add(
          Math.log10(period),
          component.amplitudeArcsecAxis().value(),
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
          Ink.QUIET.color());
    }
    return labels;
  }

  /** The line as far as it lies on the chart. */
  private static Polyline below(double top, Polyline line) {
    double[] x = new double[line.size()];
    double[] y = new double[line.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = line.x(i);
      y[i] = line.y(i) <= top ? line.y(i) : Double.NaN;
    }
    return Polyline.of(x, y);
  }

  private static Polyline logarithmic(Polyline line) {
    double[] x = new double[line.size()];
    double[] y = new double[line.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = Math.log10(line.x(i));
      y[i] = line.y(i);
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
}
