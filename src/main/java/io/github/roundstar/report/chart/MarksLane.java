package io.github.roundstar.report.chart;

import io.github.roundstar.results.Mark;
import io.github.roundstar.results.RunTrace;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.plot.XYPlot;

/** Runs and marks below a timeline: one row per kind, each kind with its own shape and its name. */
final class MarksLane {
  private static final double HALF_BAR = 0.3;

  /** Shorter stretches are drawn as moments [px]. */
  private static final double LEAST_BAR = 4;

  private final ChartStyle style;
  private final TimeScale time;
  private final List<RunTrace> runs;
  private final List<Mark.Kind> kinds;

  MarksLane(ChartStyle style, TimeScale time, List<RunTrace> runs) {
    this.style = style;
    this.time = time;
    this.runs = runs;
    this.kinds =
        runs.stream()
            .flatMap(run -> run.marks().stream())
            .map(Mark::kind)
            .distinct()
            .sorted()
            .toList();
  }

  /** The row of runs, and one per kind of mark. */
  int rows() {
    return kinds.size() + 1;
  }

  XYPlot plot() {
    List<Tick> names = new ArrayList<>();
    names.add(new Tick(0, "run"));
    for (int i = 0; i < kinds.size(); i++) {
      names.add(new Tick(-1 - i, kinds.get(i).name().toLowerCase(Locale.ROOT)));
    }
    XYPlot plot = style.plot(null, style.vertical(new ListedAxis(0.5 - rows(), 0.5, names)));
    runs(plot);
    for (int i = 0; i < kinds.size(); i++) {
      row(plot, kinds.get(i), -1 - i);
    }
    return plot;
  }

  private void runs(XYPlot plot) {
    DataLabels numbers = DataLabels.beside(style.font());
    Path2D bars = new Path2D.Double();
    for (RunTrace run : runs) {
      bars.append(Paths.box(run.startSeconds(), -0.42, run.endSeconds(), 0.42), false);
      String number = String.valueOf(run.run());
      if (time.pixels(run.endSeconds() - run.startSeconds()) > 4 + 9 * number.length()) {
        double middle = (run.startSeconds() + run.endSeconds()) / 2;
        numbers.add(middle, 0, 0, 5, DataLabels.Anchor.MIDDLE, number, Ink.INK.color());
      }
    }
    plot.addAnnotation(DataPath.filled(bars, Ink.QUIET.color(0.22)));
    plot.addAnnotation(numbers);
  }

  private void row(XYPlot plot, Mark.Kind kind, double y) {
    List<Mark> marks =
        runs.stream()
            .flatMap(run -> run.marks().stream())
            .filter(mark -> mark.kind() == kind)
            .toList();
    switch (kind) {
      case SETTLING -> plot.addAnnotation(DataPath.filled(bars(marks, y), Ink.QUIET.color()));
      case LOST -> {
        plot.addAnnotation(DataPath.filled(bars(lasting(marks), y), Ink.INK.color()));
        plot.addAnnotation(moments(brief(marks), y, MarkShapes.cross(), false));
      }
      case IDLE, CLOUD ->
          plot.addAnnotation(
              DataPath.stroked(bars(marks, y), Ink.QUIET.color(), ChartStyle.stroke(1.2f)));
      case DITHER -> plot.addAnnotation(moments(marks, y, MarkShapes.triangle(), true));
      case FLIP -> plot.addAnnotation(moments(marks, y, MarkShapes.diamond(), true));
      case JOLT -> plot.addAnnotation(moments(marks, y, MarkShapes.zigzag(), false));
      case NOTE -> plot.addAnnotation(moments(marks, y, MarkShapes.flag(), false));
    }
  }

  /** Those whose bar would be too thin to see. */
  private List<Mark> brief(List<Mark> marks) {
    return marks.stream().filter(mark -> width(mark) < LEAST_BAR).toList();
  }

  private List<Mark> lasting(List<Mark> marks) {
    return marks.stream().filter(mark -> width(mark) >= LEAST_BAR).toList();
  }

  private double width(Mark mark) {
    return time.pixels(mark.endSeconds() - mark.startSeconds());
  }

  private static Path2D bars(List<Mark> marks, double y) {
    Path2D bars = new Path2D.Double();
    for (Mark mark : marks) {
      bars.append(
          Paths.box(mark.startSeconds(), y - HALF_BAR, mark.endSeconds(), y + HALF_BAR), false);
    }
    return bars;
  }

  private static DataMarks moments(List<Mark> marks, double y, Path2D shape, boolean filled) {
    double[] at = marks.stream().mapToDouble(Mark::startSeconds).toArray();
    double[] level = new double[at.length];
    Arrays.fill(level, y);
    return new DataMarks(at, level, shape, Ink.INK.color(), filled);
  }
}
