package io.github.roundstar.motion;

import io.github.roundstar.motion.posterior.AxisModel;
import io.github.roundstar.motion.posterior.ObservedRun;
import io.github.roundstar.motion.posterior.Priors;
import io.github.roundstar.signal.WhiteRegression;
import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The frames of one axis as the posterior wants them: which columns a run has, and in which order.
 *
 * <p>First the drift and how it bends about the middle of the run, once and twice; then, for every
 * harmonic of every family, cosine and sine; then for each family what an error of its rate
 * changes; last, where a family may move, its curve and the curve's change with the angle, each
 * times slow waves over the run: a walk of its size and of its phase, but for the mean, is a sum of
 * those (the expansion of Karhunen and Lo&egrave;ve).
 */
final class AxisQuestion {
  /** Waves that a moving family is made of: what more would follow is slower than wander. */
  private static final int WAVES = 6;

  /** Drift and its bends. */
  private static final int BENDS = 3;

  /**
   * Wander and memory that the shape of a family is first looked for with: those of most nights.
   */
  private static final double USUAL_RATIO = 3e-3;

  private static final double USUAL_MEMORY_SECONDS = 0.8;

  /** Most delays are shorter; at fast cadences a third of a frame [s]. */
  private static final double PART_SECONDS = 0.3;

  /** Few plays are wider [arcsec]. */
  private static final double SURELY_TAKEN_UP = 4;

  private final Axis axis;
  private final LostMotion.Kind kind;
  private final double cadence;
  private final double partDelay;
  private final List<Family> families;
  private final List<ObservedRun> runs = new ArrayList<>();

  /** For each run what its columns of drift and sinusoids were multiplied by, at first sight. */
  private final List<double[]> shapes = new ArrayList<>();

  private boolean turned;

  /** A question about an axis with these families. */
  AxisQuestion(Axis axis, List<Family> families, double cadence, LostMotion.Kind kind) {
    this.axis = axis;
    this.kind = kind;
    this.cadence = cadence;
    this.partDelay = Math.min(PART_SECONDS, cadence / 3);
    this.families = List.copyOf(families);
  }

  /**
   * Adds a run.
   *
   * @param made what its motion is made of
   * @param quiet which samples are without jolts; all where nothing was found
   * @param cosine cosine of the declination; 1 in declination itself
   * @param exposureSeconds guide exposure [s]
   * @param sense 1, or -1 where the motor turns the other way than the sky's directions
   */
  void add(
      Reconstruction made,
      Optional<JoltFree> quiet,
      double cosine,
      double exposureSeconds,
      int sense) {
    MotionSeries offsets = made.sky().answering(0, 0);
    MotionSeries kept = quiet.map(q -> q.kept(offsets)).orElse(offsets);
    int[] samples = new int[kept.size()];
    for (int k = 0; k < samples.length; k++) {
      int sample = k;
      samples[k] = quiet.map(q -> q.original(sample)).orElse(sample);
    }
    double[] seconds = kept.seconds();
    double[] arcsec = kept.times(sense).arcsec();
    boolean[] starts = kept.startsPiece();
    RunPushes pushes = made.pushes(samples, partDelay, kind, sense);
    if (!runs.isEmpty() && axis == Axis.DEC) {
      startWhereTakenUp(starts, pushes);
    }
    double middle = (seconds[0] + seconds[seconds.length - 1]) / 2;
    double span = Math.max(1, seconds[seconds.length - 1] - seconds[0]);
    List<double[]> columns = new ArrayList<>();
    List<Double> deviations = new ArrayList<>();
    double[] since = new double[seconds.length];
    double[] bend = new double[seconds.length];
    double[] secondBend = new double[seconds.length];
    for (int i = 0; i < since.length; i++) {
      since[i] = seconds[i] - middle;
      bend[i] = since[i] * since[i];
      // Less the line that runs through it, so that the drift stays that of the whole run.
      secondBend[i] = since[i] * (bend[i] - 0.15 * span * span);
    }
    add(columns, deviations, since, Priors.DRIFT);
    add(columns, deviations, bend, Priors.BEND);
    add(columns, deviations, secondBend, Priors.SECOND_BEND);
    for (Family family : families) {
      for (int harmonic : family.harmonics()) {
        double rate = harmonic * family.angularRate();
        double dimming = cosine * ToneColumns.averaging(rate, exposureSeconds);
        add(columns, deviations, wave(since, rate, dimming, true), Priors.TONE / harmonic);
        add(columns, deviations, wave(since, rate, dimming, false), Priors.TONE / harmonic);
      }
    }
    if (!families.isEmpty()) {
      double[] shape = shape(columns, seconds, starts, arcsec, pushes);
      shapes.add(shape);
      for (double[] column : byRate(columns, shape, since)) {
        add(columns, deviations, column, 1 / span);
      }
      Family first = families.get(0);
      double turns = span * first.harmonics().get(0) * first.angularRate() / (2 * Math.PI);
      double[][] moves = moves(columns, shape, first, seconds.length);
      for (int m = 1; m <= WAVES; m++) {
        for (double[] move : moves) {
          double[] column = new double[since.length];
          for (int i = 0; i < since.length; i++) {
            double slow = Math.sqrt(2) * Math.cos(Math.PI * m * (since[i] / span + 0.5));
            column[i] = slow * move[i];
          }
          add(columns, deviations, column, Math.sqrt(turns) / (Math.PI * m));
        }
      }
    }
    runs.add(
        new ObservedRun(
            seconds,
            starts,
            arcsec,
            columns.toArray(double[][]::new),
            deviations.stream().mapToDouble(d -> d).toArray(),
            pushes,
            cosine * cosine));
    turned |= made.pushedBothWays();
  }

  /**
   * Where the gears rest at the start of a run is asked of the first alone. In a later one the
   * level begins anew where its pushes have surely taken up the play.
   */
  private static void startWhereTakenUp(boolean[] starts, RunPushes pushes) {
    double[] pushed = pushes.columns(0, 0.5, 0)[0];
    double least = 0;
    double most = 0;
    for (int i = 0; i < starts.length; i++) {
      least = Math.min(least, pushed[i]);
      most = Math.max(most, pushed[i]);
      if (most - least > SURELY_TAKEN_UP) {
        starts[i] = true;
        return;
      }
    }
  }

  Axis axis() {
    return axis;
  }

  /** The whole question. */
  AxisModel model(Priors priors) {
    return new AxisModel(
        runs,
        cadence,
        partDelay,
        tone(families.size(), 0),
        families.isEmpty() ? 0 : 2 * WAVES,
        axis == Axis.DEC && turned,
        priors);
  }

  /** Column of a harmonic's cosine; the sine follows it. */
  int tone(int family, int harmonic) {
    int at = BENDS;
    for (int f = 0; f < family; f++) {
      at += 2 * families.get(f).harmonics().size();
    }
    return at + 2 * harmonic;
  }

  /** Column of the error of a family's rate [rad/s]. */
  private int rate(int family) {
    return tone(families.size(), 0) + family;
  }

  /**
   * How much more a family's rate is than it was taken for [rad/s]. The rate's column is what a
   * change of rate does to the sinusoids seen at first sight; what it does to those of these
   * amplitudes is more where they are smaller.
   *
   * @param columns what the run's columns are multiplied by
   */
  double rateError(int run, int family, double[] columns) {
    double[] shape = shapes.get(run);
    double seen = 0;
    double own = 0;
    List<Integer> harmonics = families.get(family).harmonics();
    for (int h = 0; h < harmonics.size(); h++) {
      int at = tone(family, h);
      double weight = harmonics.get(h) * harmonics.get(h);
      seen += weight * (shape[at] * columns[at] + shape[at + 1] * columns[at + 1]);
      own += weight * (columns[at] * columns[at] + columns[at + 1] * columns[at + 1]);
    }
    return columns[rate(family)] * (own > 0 ? seen / own : 1);
  }

  /**
   * What each column is multiplied by, about, pulses of the declared strength. Left free, pushes
   * that follow the gears well take the place of the sinusoids, and their phase is lost.
   */
  private static double[] shape(
      List<double[]> columns,
      double[] seconds,
      boolean[] starts,
      double[] arcsec,
      RunPushes pushes) {
    double[] pushed = pushes.columns(0, 0.5, 0)[0];
    double[] motion = new double[arcsec.length];
    for (int i = 0; i < motion.length; i++) {
      motion[i] = arcsec[i] + pushed[i];
    }
    Whitening whitening = Whitening.of(seconds, starts, USUAL_RATIO, USUAL_MEMORY_SECONDS);
    return WhiteRegression.of(
            whitening.apply(motion), whitening.apply(columns.toArray(double[][]::new)))
        .coefficients();
  }

  /** What an error of each family's rate changes, about the middle of the run. */
  private double[][] byRate(List<double[]> columns, double[] shape, double[] since) {
    double[][] rates = new double[families.size()][since.length];
    int at = BENDS;
    for (int f = 0; f < rates.length; f++) {
      for (int h : families.get(f).harmonics()) {
        double[] cosine = columns.get(at);
        double[] sine = columns.get(at + 1);
        for (int i = 0; i < since.length; i++) {
          rates[f][i] += h * since[i] * (shape[at + 1] * cosine[i] - shape[at] * sine[i]);
        }
        at += 2;
      }
    }
    return rates;
  }

  /**
   * What an arc second more of the curve of a family is, and an arc second of it sooner: all its
   * harmonics grow together, and turn together.
   */
  private double[][] moves(List<double[]> columns, double[] shape, Family family, int samples) {
    double[][] moves = new double[2][samples];
    double[] squares = new double[2];
    int at = BENDS;
    for (int h : family.harmonics()) {
      double a = shape[at];
      double b = shape[at + 1];
      double[] cosine = columns.get(at);
      double[] sine = columns.get(at + 1);
      for (int i = 0; i < samples; i++) {
        moves[0][i] += a * cosine[i] + b * sine[i];
        moves[1][i] += h * (b * cosine[i] - a * sine[i]);
      }
      squares[0] += a * a + b * b;
      squares[1] += h * h * (a * a + b * b);
      at += 2;
    }
    for (int k = 0; k < moves.length; k++) {
      for (int i = 0; i < samples; i++) {
        moves[k][i] /= Math.max(Double.MIN_NORMAL, Math.sqrt(squares[k]));
      }
    }
    return moves;
  }

  private static double[] wave(double[] since, double rate, double factor, boolean cosine) {
    double[] wave = new double[since.length];
    for (int i = 0; i < wave.length; i++) {
      wave[i] = factor * (cosine ? Math.cos(rate * since[i]) : Math.sin(rate * since[i]));
    }
    return wave;
  }

  private static void add(
      List<double[]> columns, List<Double> deviations, double[] column, double deviation) {
    columns.add(column);
    deviations.add(deviation);
  }
}
