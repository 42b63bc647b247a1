package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.Band;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.WormTrace;
import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** One turn of the worm, or of the strongest gear, folded from all turns. */
public final class WormChart {
  private static final int HEIGHT = 380;
  private static final int RIGHT = 150;
  private static final BasicStroke MEAN = ChartStyle.stroke(2);
  private static final BasicStroke LEFT = ChartStyle.stroke(1.4f);
  private static final BasicStroke SINGLE = ChartStyle.stroke(0.8f);
  private static final double SPREAD = 0.25;

  private WormChart() {}

  /**
   * Draws it; empty without a folded curve.
   *
   * @param trained whether what training would leave is drawn too
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(NightEvidence evidence, boolean trained)
      throws ChartsUnavailable {
    Optional<WormTrace> given = evidence.worm().filter(worm -> worm.curve().size() > 1);
    if (given.isEmpty()) {
      return Optional.empty();
    }
    WormTrace worm = trained ? given.get() : untrained(given.get());
    ChartStyle style = ChartStyle.load();
    ListedAxis horizontal =
        style.horizontal(new ListedAxis(0, 1, turn(worm.periodSeconds())), "time within the turn");
    Extent extent = new Extent().addY(worm.curve()).addY(worm.model());
    worm.turns().forEach(extent::addY);
    Extent shown = extent.padded(0.06, 0.5);
    ListedAxis vertical =
        style.vertical(
            new ListedAxis(shown.low(), shown.high(), Ticks.linear(shown.low(), shown.high(), 6)));
    XYPlot plot = style.plot(horizontal, vertical);
    plot.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 2, 2, RIGHT));
    String name = new Ways(evidence.sense()).up(Ink.RA, "RA at the axis, arcsec");
    style.rules(plot, horizontal, vertical, name, Ink.RA);
    curves(plot, worm);
    plot.addAnnotation(key(style, worm));
    return Optional.of(
        style
            .draw(
                plot,
                new Sheet(
                    "worm",
                    Sheet.HALF,
                    HEIGHT,
                    "One turn, all turns laid over one another",
                    words(worm)))
            .with(table(worm)));
  }

  private static WormTrace untrained(WormTrace worm) {
    return new WormTrace(
        worm.periodSeconds(), worm.cycles(), worm.curve(), worm.model(), worm.turns());
  }

  private static void curves(XYPlot plot, WormTrace worm) {
    Path2D turns = new Path2D.Double();
    worm.turns().forEach(turn -> turns.append(Paths.line(turn), false));
    plot.addAnnotation(DataPath.stroked(turns, Ink.QUIET.color(0.4), SINGLE));
    plot.addAnnotation(DataPath.filled(Paths.outline(worm.curve()), Ink.RA.color(SPREAD)));
    plot.addAnnotation(DataPath.stroked(Paths.middle(worm.curve()), Ink.RA.color(), MEAN));
    plot.addAnnotation(
        DataPath.stroked(Paths.line(worm.model()), Ink.INK.color(), ChartStyle.DASHED));
    worm.trained()
        .ifPresent(
            trained ->
                plot.addAnnotation(
                    DataPath.stroked(Paths.line(trained.left()), Ink.INK.color(), LEFT)));
  }

  private static LineKey key(ChartStyle style, WormTrace worm) {
    LineKey key =
        new LineKey(style.font())
            .line("mean of turns", Ink.RA, MEAN)
            .band("spread of turns", Ink.RA, SPREAD);
    if (worm.model().size() > 0) {
      key.line("fitted curve", Ink.INK, ChartStyle.DASHED);
    }
    if (worm.trained().isPresent()) {
      key.line("left by training", Ink.INK, LEFT);
    }
    return worm.turns().isEmpty() ? key : key.line("single turns", Ink.QUIET, SINGLE);
  }

  private static List<Tick> turn(double periodSeconds) {
    List<Tick> ticks = new ArrayList<>();
    for (Tick tick : Ticks.spans(periodSeconds)) {
      ticks.add(new Tick(tick.value() / periodSeconds, tick.label()));
    }
    return ticks;
  }

  private static String words(WormTrace worm) {
    Extent mean = new Extent().addY(middle(worm.curve()));
    return "Right ascension over one turn of "
        + Times.period(worm.periodSeconds())
        + ", folded from "
        + Numbers.fixed(worm.cycles(), 1)
        + " turns. The mean curve runs from "
        + Numbers.plain(mean.low())
        + " to "
        + Numbers.plain(mean.high())
        + " arcsec at the axis."
        + worm.trained()
            .map(
                trained ->
                    " Training would leave "
                        + Numbers.plain(trained.after().value())
                        + " arcsec peak to peak of a single turn.")
            .orElse("");
  }

  private static Polyline middle(Band band) {
    double[] x = new double[band.size()];
    double[] y = new double[band.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = band.x(i);
      y[i] = band.middle(i);
    }
    return Polyline.of(x, y);
  }

  private static ChartTable table(WormTrace worm) {
    return new ChartTable.Spans(
            "time within the turn",
            share -> Times.shortPeriod(share * worm.periodSeconds()),
            Numbers::plain)
        .line("mean of turns, arcsec", middle(worm.curve()))
        .band("spread of turns, arcsec", worm.curve())
        .line("fitted curve, arcsec", worm.model())
        .table();
  }
}
