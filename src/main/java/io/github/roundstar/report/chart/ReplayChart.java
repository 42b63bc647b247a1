package io.github.roundstar.report.chart;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.Replay;
import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** How far the star would have moved under other gains, everything else as it was. */
public final class ReplayChart {
  private static final int HEIGHT = 380;
  private static final int RIGHT = 190;
  private static final double HIGHEST_GAIN = 1.05;
  private static final double DOT = 7;
  private static final double SAME = 1e-9;

  /** Curves are cut off at this many times the present motion. */
  private static final double MOST_OVER_PRESENT = 2.5;

  /** The plot goes on above the cut, for the words that say how far a curve goes. */
  private static final double ABOVE_CUT = 1.1;

  /** A curve of the chart: one axis, with or without its periodic error. */
  private record Sweep(String axis, boolean trained, Ink ink, BasicStroke stroke) {}

  private static final List<Sweep> SWEEPS =
      List.of(
          new Sweep("ra", false, Ink.RA, ChartStyle.LINE),
          new Sweep("ra", true, Ink.RA, ChartStyle.THIN_DASHED),
          new Sweep("dec", false, Ink.DEC, ChartStyle.DASHED));

  private ReplayChart() {}

  /**
   * Draws it; empty without rows.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(List<Replay> rows) throws ChartsUnavailable {
    if (rows.isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    ListedAxis horizontal = gains(style, rows);
    double cut = highest(rows);
    double high = ABOVE_CUT * cut;
    ListedAxis vertical = style.vertical(new ListedAxis(0, high, Ticks.linear(0, cut, 6)));
    XYPlot plot = style.plot(horizontal, vertical);
    plot.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 2, 2, RIGHT));
    style.rules(plot, horizontal, vertical, "RMS of the star's motion, arcsec", Ink.INK);
    LineKey key = new LineKey(style.font());
    DataLabels labels = DataLabels.above(style.font(), highestCurve(rows));
    present(plot, labels, rows);
    for (Sweep sweep : SWEEPS) {
      curve(plot, key, labels, rows, sweep, cut);
    }
    plot.addAnnotation(key);
    plot.addAnnotation(labels);
    return Optional.of(
        style
            .draw(
                plot,
                new Sheet(
                    "replay", Sheet.HALF, HEIGHT, "Star motion under other gains", words(rows)))
            .with(table(rows)));
  }

  private static ListedAxis gains(ChartStyle style, List<Replay> rows) {
    Extent gains = new Extent().add(HIGHEST_GAIN);
    rows.stream().filter(Replay::current).forEach(row -> gains.add(1.05 * row.gain()));
    return style.horizontal(
        new ListedAxis(0, gains.high(), Ticks.linear(0, gains.high(), 10)),
        "gain: share of an offset that a pulse takes away");
  }

  /** Room for all curves, unless a bad gain would press the others flat. */
  private static double highest(List<Replay> rows) {
    Extent curves =
        new Extent()
            .add(0.01)
            .addY(sweep(rows, "ra", false))
            .addY(sweep(rows, "ra", true))
            .addY(sweep(rows, "dec", false));
    Extent present = new Extent();
    rows.stream()
        .filter(Replay::current)
        .forEach(row -> present.add(row.predictedMotionRmsArcsec()));
    return 1.02 * Math.min(curves.high(), MOST_OVER_PRESENT * Math.max(0.01, present.reach()));
  }

  /** The sweep over gain at the present deadband and cadence. */
  private static Polyline sweep(List<Replay> rows, String axis, boolean trained) {
    Optional<Replay> current =
        rows.stream().filter(r -> r.current() && r.axis().equals(axis)).findFirst();
    List<Replay> points =
        rows.stream()
            .filter(r -> r.axis().equals(axis))
            .filter(r -> r.trained() == trained)
            .filter(r -> current.map(c -> alike(c, r)).orElse(false))
            .sorted(Comparator.comparingDouble(Replay::gain))
            .toList();
    return Polyline.of(
        points.stream().mapToDouble(Replay::gain).toArray(),
        points.stream().mapToDouble(Replay::predictedMotionRmsArcsec).toArray());
  }

  private static boolean alike(Replay current, Replay row) {
    return Math.abs(current.deadbandArcsec() - row.deadbandArcsec()) < SAME
        && Math.abs(current.cadenceSeconds() - row.cadenceSeconds()) < SAME;
  }

  private static void curve(
      XYPlot plot, LineKey key, DataLabels labels, List<Replay> rows, Sweep sweep, double cut) {
    Polyline curve = sweep(rows, sweep.axis, sweep.trained);
    if (curve.size() > 1) {
      plot.addAnnotation(
          DataPath.stroked(inside(curve, cut, labels, sweep.ink), sweep.ink.color(), sweep.stroke));
      String name = name(sweep.axis) + (sweep.trained ? ", error trained out" : "");
      key.line(name, sweep.ink, sweep.stroke);
    }
  }

  /**
   * What of a curve lies below the cut; where it goes on beyond, a word above the cut says how far.
   */
  private static Path2D inside(Polyline curve, double high, DataLabels labels, Ink ink) {
    Path2D path = new Path2D.Double();
    boolean open = false;
    for (int i = 0; i < curve.size(); i++) {
      boolean in = curve.y(i) <= high;
      if (i > 0 && in != curve.y(i - 1) <= high) {
        double share = (high - curve.y(i - 1)) / (curve.y(i) - curve.y(i - 1));
        double x = curve.x(i - 1) + share * (curve.x(i) - curve.x(i - 1));
        if (in) {
          path.moveTo(x, high);
          open = true;
        } else {
          path.lineTo(x, high);
        }
        double end = in ? curve.y(0) : curve.y(curve.size() - 1);
        DataLabels.Anchor anchor = in ? DataLabels.Anchor.START : DataLabels.Anchor.END;
        labels.add(x, high, 0, -4, anchor, "\u2191 to " + Numbers.plain(end), ink.color());
      }
      if (in && open) {
        path.lineTo(curve.x(i), curve.y(i));
      } else if (in) {
        path.moveTo(curve.x(i), curve.y(i));
      }
      open = in;
    }
    return path;
  }

  /** The highest of all curves at every gain, which no label may lie on. */
  private static Polyline highestCurve(List<Replay> rows) {
    TreeMap<Double, Double> highest = new TreeMap<>();
    for (Polyline curve :
        List.of(sweep(rows, "ra", false), sweep(rows, "ra", true), sweep(rows, "dec", false))) {
      for (int i = 0; i < curve.size(); i++) {
        highest.merge(curve.x(i), curve.y(i), Math::max);
      }
    }
    return Polyline.of(
        highest.keySet().stream().mapToDouble(x -> x).toArray(),
        highest.values().stream().mapToDouble(y -> y).toArray());
  }

  private static void present(XYPlot plot, DataLabels labels, List<Replay> rows) {
    for (Replay row : rows) {
      if (row.current()) {
        Polyline dot =
            Polyline.of(new double[] {row.gain()}, new double[] {row.predictedMotionRmsArcsec()});
        Ink ink = row.axis().equals("ra") ? Ink.RA : Ink.DEC;
        plot.addAnnotation(
            DataPath.stroked(Paths.dots(dot), ink.color(), ChartStyle.stroke((float) DOT)));
        labels.add(
            row.gain(),
            row.predictedMotionRmsArcsec(),
            6,
            -8,
            DataLabels.Anchor.START,
            name(row.axis()) + " as it was",
            ink.color());
      }
    }
  }

  private static String name(String axis) {
    return axis.equals("ra") ? "RA" : Sentences.capital(axis);
  }

  private static String words(List<Replay> rows) {
    StringBuilder text = new StringBuilder("RMS of the star's motion against the gain.");
    for (Replay row : rows) {
      if (row.current() || row.best()) {
        text.append(' ')
            .append(name(row.axis()))
            .append(
                row.current()
                    ? ", as it was: gain "
                    : row.trained() ? ", best with the error trained out: gain " : ", best: gain ")
            .append(Numbers.fixed(row.gain(), 2))
            .append(", ")
            .append(Numbers.plain(row.predictedMotionRmsArcsec()))
            .append(" arcsec.");
      }
    }
    return text.toString();
  }

  private static ChartTable table(List<Replay> rows) {
    ChartTable.Spans spans =
        new ChartTable.Spans("gain", gain -> Numbers.fixed(gain, 2), Numbers::plain);
    return spans
        .line("RA, arcsec RMS", sweep(rows, "ra", false))
        .line("RA trained, arcsec RMS", sweep(rows, "ra", true))
        .line("Dec, arcsec RMS", sweep(rows, "dec", false))
        .table();
  }
}
