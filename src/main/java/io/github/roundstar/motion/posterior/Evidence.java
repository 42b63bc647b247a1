package io.github.roundstar.motion.posterior;

import io.github.roundstar.motion.posterior.Priors.Movement;
import io.github.roundstar.motion.posterior.Priors.Scale;
import io.github.roundstar.motion.posterior.Priors.Strength;
import io.github.roundstar.motion.posterior.SteadyColumns.Left;
import io.github.roundstar.motion.posterior.SteadyColumns.Steady;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The posterior for one wander, memory and play: noise, late share, prior of the strength and
 * movement of sinusoids are summed over; strength, unlikeness and steady columns are Gaussian given
 * those, and integrated exactly.
 */
final class Evidence {
  /** Elements so much lighter than the heaviest are dropped at once [natural logarithm]. */
  private static final double MARGIN = 1;

  /** A movement or size so much lighter for one noise is light beyond it [natural logarithm]. */
  private static final double BY_FAR = 6;

  private static final int MOST_NOISES = 60;

  /** More than rounding makes of a weight [natural logarithm]. */
  private static final double ROUNDING = 1e-3;

  /** Room for so many elements at first. */
  private static final int EXPECTED = 256;

  /** Delays are looked at over at least this share of the way between two columns. */
  private static final double LEAST_SHARE = 0.1;

  /** The least pivot of a column that the rest of noise is counted without. */
  private static final double REPEATS = 1e-7;

  /**
   * Least variance of the noise as a share of what all frames move together: with less, rounding
   * alone would be larger than what is left of them.
   */
  private static final double DIGITS = 1e-13;

  private final AxisModel model;
  private final Resolution resolution;
  private final double[][][] products;
  private final int steps;
  private final double constant;
  private final double unlikeness;
  private final double floor;
  private final SteadyColumns columns;
  private final Known[] strengths;

  /** Those that count; none where their sum alone is asked for. */
  private final List<Element> elements;

  private double[] weights = new double[EXPECTED];
  private int size;
  private double highest = Double.NEGATIVE_INFINITY;

  /** Weight below which an element does not count, by what is known so far. */
  private double least;

  private boolean[][] light;
  private Steady[] steady;
  private List<Delay> delays;
  private double centre;
  private double width;
  private double leastNoise;

  private Evidence(
      AxisModel model,
      Resolution resolution,
      WhiteFrames frames,
      double[][][] products,
      SteadyColumns columns,
      Play play,
      double floor,
      List<Element> elements) {
    this.model = model;
    this.resolution = resolution;
    this.products = products;
    this.columns = columns;
    this.steps = frames.steps();
    this.constant = -0.5 * (steps * Math.log(2 * Math.PI) + frames.logDeterminant());
    this.unlikeness = play.unlikeCell() > 0 ? 0 : play.unlikeness();
    this.strengths =
        model.priors().strengths().stream()
            .map(strength -> Known.of(strength, unlikeness, play.unlikeCell() / Math.sqrt(12)))
            .toArray(Known[]::new);
    this.floor = floor;
    this.least = floor;
    this.elements = elements;
  }

  /**
   * What a prior of the strength adds to what the frames say.
   *
   * @param rr precision of the strength, rd and dd those with unlikeness
   * @param ry what the strength is pulled by
   * @param log logarithm of its weight and height
   * @param logVolume half the logarithm of the determinant of its precision
   */
  private record Known(double rr, double rd, double dd, double ry, double log, double logVolume) {
    static Known of(Strength strength, double unlikeness, double cellDeviation) {
      double m = strength.mean();
      double v = strength.deviation() * strength.deviation();
      double u = (cellDeviation > 0 ? cellDeviation : strength.unlikeness()) * m;
      u *= u;
      double half = 0.5 * Math.log(v * u);
      return new Known(
          1 / v + unlikeness * unlikeness / u,
          unlikeness / u,
          1 / u,
          m / v,
          Math.log(strength.weight()) - half - 0.5 * m * m / v,
          -half);
    }
  }

  /**
   * One Gaussian of the mixture.
   *
   * @param logWeight logarithm of its weight, prior and width of its cell included
   * @param logNoise natural logarithm of the noise's standard deviation [arcsec]
   * @param movement index among the prior's
   * @param delay how long pushes wait [s]
   * @param delayFrom lower end of the delays that this one stands for, delayTo upper end
   * @param strength index among the prior's
   * @param r mean of the strength [declared]
   * @param d mean of the excess unlikeness times strength
   * @param rr variance of r, rd covariance, dd variance of d
   */
  record Element(
      double logWeight,
      double logNoise,
      int movement,
      double delay,
      double delayFrom,
      double delayTo,
      int strength,
      double r,
      double d,
      double rr,
      double rd,
      double dd,
      Steady[] steady) {}

  /**
   * Sums up.
   *
   * @param frames made white
   * @param products of all columns of each run, as {@link WhiteFrames} gives them
   * @param play about whose unlikeness the pushes' columns are linear
   * @param floor elements lighter than this are not looked for
   */
  static Evidence of(
      AxisModel model,
      Resolution resolution,
      WhiteFrames frames,
      double[][][] products,
      SteadyColumns columns,
      Play play,
      double floor) {
    Evidence evidence =
        new Evidence(
            model, resolution, frames, products, columns, play, floor, new ArrayList<>(EXPECTED));
    evidence.sum();
    return evidence;
  }

  /** Logarithm of the marginal density alone; all words as above. */
  static double log(
      AxisModel model,
      Resolution resolution,
      WhiteFrames frames,
      double[][][] products,
      SteadyColumns columns,
      Play play) {
    Evidence evidence =
        new Evidence(
            model, resolution, frames, products, columns, play, Double.NEGATIVE_INFINITY, null);
    evidence.sum();
    return evidence.log();
  }

  List<Element> elements() {
    return elements;
  }

  /** Mean of the noise's natural logarithm, about. */
  double centre() {
    return centre;
  }

  /** Distance of the noises looked at [natural logarithm]. */
  double noiseStep() {
    return resolution.step() * width;
  }

  /** Logarithm of the marginal density. */
  double log() {
    double sum = 0;
    for (int i = 0; i < size; i++) {
      if (!(weights[i] < least - MARGIN)) {
        sum += Math.exp(weights[i] - highest);
      }
    }
    return size == 0 ? Double.NEGATIVE_INFINITY : highest + Math.log(sum);
  }

  private void sum() {
    place();
    double top = Double.NEGATIVE_INFINITY;
    boolean[][] atCentre = null;
    for (int side = -1; side <= 1; side += 2) {
      double before = Double.NEGATIVE_INFINITY;
      // What is light far on one side of the centre need not be so on the other.
      light = atCentre;
      for (int i = side < 0 ? 0 : 1; i < MOST_NOISES; i++) {
        double noise = centre + side * i * noiseStep();
        if (noise < leastNoise) {
          break;
        }
        double here = atNoise(noise);
        if (atCentre == null) {
          atCentre = Arrays.stream(light).map(boolean[]::clone).toArray(boolean[][]::new);
        }
        top = Math.max(top, here);
        if (here < Math.max(top - resolution.elementCut(), floor) && !(here > before)) {
          break;
        }
        before = here;
      }
    }
    if (elements != null) {
      elements.removeIf(e -> e.logWeight < least - MARGIN);
    }
  }

  /** Finds the noise by plain least squares, all columns free, the pushes shared. */
  private void place() {
    int q = Pushes.COLUMNS;
    double[][] shared = new double[q + 1][q + 1];
    double[] whole = new double[q + 1];
    int free = 0;
    for (double[][] run : products) {
      int k = run.length - q - 1;
      double[][] all = copy(run);
      free += eliminate(all, run, k);
      for (int a = 0; a <= q; a++) {
        whole[a] += run[k + a][k + a];
        for (int b = 0; b <= a; b++) {
          shared[a][b] += all[k + a][k + b];
        }
      }
    }
    double[][] plain = new double[q + 1][q + 1];
    for (int a = 0; a <= q; a++) {
      plain[a][a] = whole[a];
    }
    free += eliminate(shared, plain, q);
    double left = shared[q][q];
    double degrees = Math.max(1, steps - free);
    double deviation = model.priors().noiseLogDeviation();
    double precision = 2 * degrees + 1 / (deviation * deviation);
    double median = Math.log(model.priors().noiseMedianArcsec());
    leastNoise =
        Math.max(
            0.5 * Math.log(DIGITS * (whole[q] + whole[0]) + Double.MIN_NORMAL),
            median - 25 * deviation);
    double plainly = steps > free ? 0.5 * Math.log(Math.max(left, 0) / degrees) : median;
    centre = Math.max(plainly, leastNoise);
    width = 1 / Math.sqrt(precision);
  }

  /** Takes the first columns out of the others, but for those that repeat others; how many. */
  private static int eliminate(double[][] all, double[][] before, int count) {
    int free = 0;
    for (int j = 0; j < count; j++) {
      double pivot = all[j][j];
      if (pivot <= REPEATS * before[j][j] || pivot <= 0) {
        continue;
      }
      free++;
      for (int a = j + 1; a < all.length; a++) {
        double share = all[a][j] / pivot;
        if (share != 0) {
          for (int b = j + 1; b <= a; b++) {
            all[a][b] -= share * all[b][j];
          }
        }
      }
    }
    return free;
  }

  private static double[][] copy(double[][] matrix) {
    double[][] copy = new double[matrix.length][];
    for (int i = 0; i < copy.length; i++) {
      copy[i] = matrix[i].clone();
    }
    return copy;
  }

  private double atNoise(double logNoise) {
    double best = Double.NEGATIVE_INFINITY;
    double unit = Math.exp(-2 * logNoise);
    Left[] staying = new Left[model.priors().scales().size()];
    delays = null;
    List<Movement> movements = model.priors().movements();
    List<Scale> scales = model.priors().scales();
    double prior =
        model.priors().logNoise(logNoise) + Math.log(noiseStep()) + constant - steps * logNoise;
    int moves = model.moving() > 0 ? movements.size() : 1;
    if (light == null) {
      light = new boolean[moves][scales.size()];
    }
    for (int m = 0; m < moves; m++) {
      double weight = model.moving() > 0 ? Math.log(movements.get(m).weight()) : 0;
      for (int g = 0; g < scales.size(); g++) {
        if (light[m][g]) {
          continue;
        }
        if (staying[g] == null) {
          staying[g] = columns.staying(products, unit, g);
        }
        double before = prior + weight + Math.log(scales.get(g).weight());
        double here = atMovement(logNoise, m, columns.moving(staying[g], m), before);
        // What is so light beside the others for one noise is light for its neighbours.
        light[m][g] = here < least - BY_FAR;
        best = Math.max(best, here);
      }
    }
    return best;
  }

  private double atMovement(double logNoise, int movement, Left of, double before) {
    double[][] left = of.pushed();
    double base = before + of.log() - 0.5 * left[Pushes.COLUMNS][Pushes.COLUMNS];
    if (delays == null) {
      // Movement and size change hardly which delays have weight.
      delays = delays(left);
    }
    Pushed[] pushed = new Pushed[delays.size()];
    for (int i = 0; i < pushed.length; i++) {
      pushed[i] = pushed(left, delays.get(i));
    }
    steady = null;
    double best = Double.NEGATIVE_INFINITY;
    for (int c = 0; c < strengths.length; c++) {
      best = Math.max(best, atStrength(logNoise, movement, c, base, pushed, of));
    }
    return best;
  }

  /**
   * A delay that stands for those near it.
   *
   * @param seconds how long [s], from and to the delays that this one stands for
   * @param log logarithm of the prior times the part it stands for
   * @param before column of pushes before it, share how far it is to the next one
   * @param late share of the cadence
   */
  private record Delay(
      double seconds, double from, double to, double log, int before, double share, double late) {}

  /**
   * What the frames say of pushes that wait for so long, whatever their strength.
   *
   * @param rr precision of the strength that the frames give, rd and dd those with unlikeness
   * @param ry what the frames pull the strength by, dy the unlikeness
   */
  private record Pushed(Delay delay, double rr, double rd, double dd, double ry, double dy) {}

  /** Delays where any strength may have weight, by the widest of the priors. */
  private List<Delay> delays(double[][] left) {
    GaussLegendre rule = GaussLegendre.of(resolution.lateNodes());
    List<Delay> delays = new ArrayList<>(2 * rule.size());
    double begin = 0;
    double end = model.partDelay();
    for (int part = 0; part < Pushes.DELAYS - 1; part++) {
      double fall =
          model.priors().logDelay(begin, model.cadence())
              - model.priors().logDelay(end, model.cadence());
      LateShare lates =
          LateShare.of(left, part, model.priors().widest(), 1 / fall, resolution.elementCut());
      double middle = (lates.from() + lates.to()) / 2;
      double half = Math.max(LEAST_SHARE, lates.to() - lates.from()) / 2;
      double from = begin + Math.max(0, middle - half) * (end - begin);
      double to = begin + Math.min(1, middle + half) * (end - begin);
      for (int i = 0; i < rule.size(); i++) {
        double delay = rule.node(i, from, to);
        delays.add(
            new Delay(
                delay,
                rule.edge(i, from, to),
                rule.edge(i + 1, from, to),
                Math.log(rule.weight(i) * (to - from))
                    + model.priors().logDelay(delay, model.cadence()),
                part,
                model.betweenColumns(part, delay),
                delay / model.cadence()));
      }
      begin = end;
      end = model.cadence();
    }
    return delays;
  }

  private Pushed pushed(double[][] left, Delay delay) {
    int i = delay.before;
    int j = i + 1;
    double b = delay.share;
    double a = 1 - b;
    int k = Pushes.DELAYS;
    int l = k + 1;
    int y = l + 1;
    double late = delay.late;
    double now = 1 - late;
    return new Pushed(
        delay,
        a * a * left[i][i] + 2 * a * b * left[i][j] + b * b * left[j][j],
        now * (a * left[i][k] + b * left[j][k]) + late * (a * left[i][l] + b * left[j][l]),
        now * now * left[k][k] + 2 * now * late * left[k][l] + late * late * left[l][l],
        -(a * left[i][y] + b * left[j][y]),
        -(now * left[k][y] + late * left[l][y]));
  }

  private double atStrength(
      double logNoise, int movement, int index, double base, Pushed[] pushed, Left of) {
    Known known = strengths[index];
    double prior = base + known.log;
    double best = Double.NEGATIVE_INFINITY;
    for (Pushed at : pushed) {
      double rr = at.rr + known.rr;
      double rd = at.rd + known.rd;
      double dd = at.dd + known.dd;
      double ry = at.ry + known.ry;
      double determinant = rr * dd - rd * rd;
      if (!(determinant > 0)) {
        // Rounding is all that is left of the pushes: a noise far too small for these columns.
        continue;
      }
      double r = (dd * ry - rd * at.dy) / determinant;
      double d = (rr * at.dy - rd * ry) / determinant;
      double height = prior + at.delay.log + 0.5 * (r * ry + d * at.dy);
      // Frames can but add to the precision beforehand, so that most need no logarithm.
      if (height - known.logVolume < Math.min(best, least - MARGIN) - ROUNDING) {
        continue;
      }
      double weight = height - 0.5 * Math.log(determinant);
      best = Math.max(best, weight);
      if (weight > least - MARGIN) {
        add(weight);
        if (elements != null) {
          if (steady == null) {
            steady = of.steady();
          }
          elements.add(
              new Element(
                  weight,
                  logNoise,
                  movement,
                  at.delay.seconds,
                  at.delay.from,
                  at.delay.to,
                  index,
                  r,
                  d,
                  dd / determinant,
                  -rd / determinant,
                  rr / determinant,
                  steady));
        }
      }
    }
    return best;
  }

  private void add(double weight) {
    if (weight > highest) {
      highest = weight;
      least = Math.max(highest - resolution.elementCut(), floor);
    }
    if (size == weights.length) {
      weights = Arrays.copyOf(weights, 2 * size);
    }
    weights[size++] = weight;
  }

  /** What a run's pushes take from a reduced column of offsets, by strength and unlikeness. */
  static double[] taken(AxisModel model, double[][] reduced, double delay, int row) {
    int i = delay < model.partDelay() ? 0 : 1;
    double b = model.betweenColumns(i, delay);
    double late = delay / model.cadence();
    int k = Pushes.DELAYS;
    return new double[] {
      (1 - b) * reduced[i][row] + b * reduced[i + 1][row],
      (1 - late) * reduced[k][row] + late * reduced[k + 1][row]
    };
  }
}
