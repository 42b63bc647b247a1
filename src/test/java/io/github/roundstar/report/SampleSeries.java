package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Band;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.Mark;
import io.github.roundstar.results.MotionTrace;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.RunTrace;
import io.github.roundstar.results.SpectrumTrace;
import io.github.roundstar.results.WormTrace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Invented series for charts: sinusoids, a drift and noise from a fixed seed. */
final class SampleSeries {
  static final double GAP_SECONDS = 420;

  private static final long SEED = 20260314;
  private static final int COLUMNS = 550;
  private static final double WORM_SECONDS = 479.1;
  private static final double CADENCE_SECONDS = 2.5;

  private final int runs;
  private final double runSeconds;
  private final double totalSeconds;

  SampleSeries(int runs, double runSeconds) {
    this.runs = runs;
    this.runSeconds = runSeconds;
    this.totalSeconds = runs * runSeconds + (runs - 1) * GAP_SECONDS;
  }

  List<RunTrace> timeline(String note) {
    List<RunTrace> traces = new ArrayList<>();
    for (int i = 0; i < runs; i++) {
      double start = start(i);
      traces.add(
          new RunTrace(
              i + 1,
              start,
              start + runSeconds,
              envelope(start, 0.36, 0.3, SEED + i),
              envelope(start, 0.33, 0.1, SEED + 100 + i),
              marks(start, i, note)));
    }
    return traces;
  }

  Polyline cloud() {
    int size = (int) Math.min(4000, runs * runSeconds / CADENCE_SECONDS);
    Random random = new Random(SEED);
    double[] east = new double[size];
    double[] north = new double[size];
    double angle = Math.toRadians(78);
    for (int i = 0; i < size; i++) {
      double along = 0.52 * random.nextGaussian();
      double across = 0.36 * random.nextGaussian();
      east[i] = along * Math.sin(angle) + across * Math.cos(angle);
      north[i] = along * Math.cos(angle) - across * Math.sin(angle);
    }
    return Polyline.of(east, north);
  }

  List<MotionTrace> raMotion() {
    return motion(-0.11, 0.16, t -> 0.85 * wormArcsec(t), 0.2);
  }

  List<MotionTrace> decMotion() {
    return motion(0.412, 0.024, t -> 0.5 * Math.sin(t / 900), 0.2);
  }

  SpectrumTrace spectrum(List<Component> components) {
    int size = 2000;
    double[] period = new double[size];
    double[] amplitude = new double[size];
    double[] limit = new double[size];
    Random random = new Random(SEED);
    for (int i = 0; i < size; i++) {
      period[i] = 5 * Math.pow(720, i / (size - 1.0));
      limit[i] = 0.05 + 0.0009 * period[i];
      double value = (0.02 + 0.0006 * period[i]) * (0.4 + 0.6 * random.nextDouble());
      for (Component c : components) {
        double peak = c.periodSeconds().value();
        double width = peak * peak / totalSeconds / 1.2;
        value =
            Math.max(
                value,
                c.amplitudeArcsecAxis().value()
                    * Math.exp(-Math.pow((period[i] - peak) / width, 2)));
      }
      amplitude[i] = value;
    }
    return new SpectrumTrace(
        Polyline.of(period, amplitude), Polyline.of(period, limit), components);
  }

  WormTrace worm() {
    Random random = new Random(SEED);
    double[] share = new double[121];
    double[] mean = new double[121];
    double[] low = new double[121];
    double[] high = new double[121];
    double[] model = new double[121];
    for (int i = 0; i <= 120; i++) {
      share[i] = i / 120.0;
      model[i] = wormArcsec(share[i] * WORM_SECONDS);
      mean[i] = model[i] + 0.15 * Math.sin(21 * share[i]);
      low[i] = mean[i] - 0.45;
      high[i] = mean[i] + 0.45;
    }
    List<Polyline> turns = new ArrayList<>();
    for (int k = 0; k < 14; k++) {
      double shift = 0.4 * random.nextGaussian();
      double[] turn =
          Arrays.stream(mean).map(y -> y + shift + 0.12 * random.nextGaussian()).toArray();
      turns.add(Polyline.of(share, turn));
    }
    return new WormTrace(
        WORM_SECONDS, 14.6, Band.of(share, low, mean, high), Polyline.of(share, model), turns);
  }

  static RunTrace emptyRun(List<Mark> marks) {
    Band none = Band.of(new double[0], new double[0], new double[0], new double[0]);
    return new RunTrace(1, 0, 0, none, none, marks);
  }

  private double start(int run) {
    return run * (runSeconds + GAP_SECONDS);
  }

  private static double wormArcsec(double seconds) {
    double turn = 2 * Math.PI * seconds / WORM_SECONDS;
    return 5.62 * Math.sin(turn) + 1.31 * Math.sin(2 * turn + 1.9);
  }

  private Band envelope(double start, double noise, double swing, long seed) {
    Random random = new Random(seed);
    int columns = (int) Math.min(COLUMNS * runSeconds / totalSeconds, runSeconds / CADENCE_SECONDS);
    double[] x = new double[columns];
    double[] low = new double[columns];
    double[] middle = new double[columns];
    double[] high = new double[columns];
    int perColumn = (int) Math.max(1, runSeconds / CADENCE_SECONDS / columns);
    for (int i = 0; i < columns; i++) {
      x[i] = start + i * runSeconds / columns;
      double[] values = new double[perColumn];
      for (int k = 0; k < perColumn; k++) {
        values[k] =
            noise * random.nextGaussian() + swing * Math.sin(2 * Math.PI * x[i] / WORM_SECONDS);
      }
      Arrays.sort(values);
      low[i] = values[0];
      middle[i] = (values[perColumn / 2] + values[(perColumn - 1) / 2]) / 2;
      high[i] = values[perColumn - 1];
    }
    return Band.of(x, low, middle, high);
  }

  private List<Mark> marks(double start, int run, String note) {
    List<Mark> marks = new ArrayList<>();
    if (run > 0) {
      marks.add(new Mark(Mark.Kind.FLIP, start, start, ""));
    }
    for (double t = 700; t < runSeconds; t += 720) {
      marks.add(new Mark(Mark.Kind.DITHER, start + t, start + t, ""));
      marks.add(new Mark(Mark.Kind.SETTLING, start + t, start + t + 14, ""));
    }
    marks.add(new Mark(Mark.Kind.LOST, start + 1900, start + 1930, ""));
    marks.add(new Mark(Mark.Kind.IDLE, start + 2600, start + 2690, ""));
    marks.add(new Mark(Mark.Kind.NOTE, start + 3100, start + 3100, note));
    return marks;
  }

  private List<MotionTrace> motion(
      double perMinute, double halfWidth, DoubleUnaryOperator shape, double noise) {
    List<MotionTrace> traces = new ArrayList<>();
    for (int i = 0; i < runs; i++) {
      Random random = new Random(SEED + i);
      int size = (int) Math.min(1400, runSeconds / CADENCE_SECONDS);
      double[] x = new double[size];
      double[] y = new double[size];
      for (int k = 0; k < size; k++) {
        double t = k * runSeconds / size;
        x[k] = start(i) + t;
        y[k] = shape.applyAsDouble(x[k]) + perMinute * t / 60 + noise * random.nextGaussian();
      }
      double end = start(i) + runSeconds;
      traces.add(
          new MotionTrace(
              i + 1,
              Polyline.of(x, y),
              Polyline.of(
                  new double[] {start(i), end}, new double[] {0, perMinute * runSeconds / 60}),
              Estimate.symmetric(perMinute, halfWidth)));
    }
    return traces;
  }
}
