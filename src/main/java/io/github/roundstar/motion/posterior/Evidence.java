package io.github.roundstar.motion.posterior;

import io.github.roundstar.motion.posterior.Priors.Movement;
import io.github.roundstar.motion.posterior.Priors.Scale;
import io.github.roundstar.motion.posterior.Priors.Strength;
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
  private final double cellDeviation;
  private final List<Element> elements = new ArrayList<>(EXPECTED);
  private double highest = Double.NEGATIVE_INFINITY;
  private boolean[][] light;
  private List<Delay> delays;
  private double centre;
  private double width;
  private double leastNoise;

  private Evidence(
      AxisModel model,
      Resolution resolution,
      double[][][] products,
      int steps,
      double logDeterminant,
      Play play,
      double floor) {
    this.model = model;
    this.resolution = resolution;
    this.products = products;
    this.steps = steps;
    this.constant = -0.5 * (steps * Math.log(2 * Math.PI) + logDeterminant);
    boolean own = play.unlikeCell() > 0;
    this.unlikeness = own ? 0 : play.unlikeness();
    this.cellDeviation = play.unlikeCell() / Math.sqrt(12);
    this.floor = floor;
  }

  /**
   * Steady columns for one noise and one movement: L of their precision, and L^-1 of their products
   * with pushes and offsets over the noise's variance.
   */
  record Steady(Cholesky lower, double[][] reduced, int columns) {}

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
   * @param products of all columns of each run, as {@link WhiteFrames} gives them
   * @param play about whose unlikeness the pushes' columns are linear
   * @param floor elements lighter than this are not looked for
   */
  static Evidence of(
      AxisModel model,
      Resolution resolution,
      double[][][] products,
      WhiteFrames frames,
      Play play,
      double floor) {
    Evidence evidence =
        new Evidence(
            model, resolution, products, frames.steps(), frames.logDeterminant(), play, floor);
    evidence.sum();
    return evidence;
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
    for (Element element : elements) {
      sum += Math.exp(element.logWeight - highest);
    }
    return elements.isEmpty() ? Double.NEGATIVE_INFINITY : highest + Math.log(sum);
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
    elements.removeIf(e -> e.logWeight < least() - MARGIN);
  }

  /** Weight below which an element does not count, by what is known so far. */
  private double least() {
    return Math.max(highest - resolution.elementCut(), floor);
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
        double here =
            atMovement(
                logNoise,
                m,
                scales.get(g).factor(),
                prior + weight + Math.log(scales.get(g).weight()));
        // What is so light beside the others for one noise is light for its neighbours.
        light[m][g] = here < least() - BY_FAR;
        best = Math.max(best, here);
      }
    }
    return best;
  }

  private double atMovement(double logNoise, int movement, double scale, double before) {
    double unit = Math.exp(-2 * logNoise);
    double walk = model.priors().movements().get(movement).arcsecPerRootTurn();
    int q = Pushes.COLUMNS + 1;
    double[][] left = new double[q][q];
    Steady[] steady = new Steady[products.length];
    double base = before;
    for (int r = 0; r < steady.length; r++) {
      base += atRun(r, unit, walk, scale, left, steady);
    }
    base -= 0.5 * left[q - 1][q - 1];
    if (delays == null) {
      // Movement and size change hardly which delays have weight.
      delays = delays(left);
    }
    List<Pushed> pushed = new ArrayList<>(delays.size());
    for (Delay delay : delays) {
      pushed.add(pushed(left, delay));
    }
    double best = Double.NEGATIVE_INFINITY;
    List<Strength> strengths = model.priors().strengths();
    for (int c = 0; c < strengths.size(); c++) {
      best =
          Math.max(best, atStrength(logNoise, movement, c, strengths.get(c), base, pushed, steady));
    }
    return best;
  }

  /** Integrates a run's steady columns; what they leave of pushes and offsets is added. */
  private double atRun(
      int r, double unit, double walk, double scale, double[][] left, Steady[] steady) {
    double[][] of = products[r];
    int all = model.columns();
    int staying = all - model.moving();
    int k = walk > 0 ? all : staying;
    double[] deviations = model.runs().get(r).deviations();
    double logPrior = 0;
    double[][] precision = new double[k][];
    for (int i = 0; i < k; i++) {
      precision[i] = new double[i + 1];
      for (int j = 0; j <= i; j++) {
        precision[i][j] = unit * of[i][j];
      }
      double deviation =
          i < model.scaled()
              ? Priors.ofSize(i, deviations[i], scale)
              : deviations[i] * (i < staying ? 1 : walk);
      precision[i][i] += 1 / (deviation * deviation);
      logPrior -= Math.log(deviation);
    }
    Cholesky lower = Cholesky.inPlace(precision);
    int q = Pushes.COLUMNS + 1;
    double[][] reduced = new double[q][k];
    for (int c = 0; c < q; c++) {
      for (int i = 0; i < k; i++) {
        reduced[c][i] = unit * of[all + c][i];
      }
      lower.forward(reduced[c]);
    }
    for (int a = 0; a < q; a++) {
      for (int b = 0; b <= a; b++) {
        double sum = unit * of[all + a][all + b];
        for (int i = 0; i < k; i++) {
          sum -= reduced[a][i] * reduced[b][i];
        }
        left[a][b] += sum;
        left[b][a] = left[a][b];
      }
    }
    steady[r] = new Steady(lower, reduced, k);
    return logPrior - 0.5 * lower.logDeterminant();
  }

  /**
   * A delay that stands for those near it.
   *
   * @param seconds how long [s], from and to the delays that this one stands for
   * @param log logarithm of the prior times the part it stands for
   */
  private record Delay(double seconds, double from, double to, double log) {}

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
                    + model.priors().logDelay(delay, model.cadence())));
      }
      begin = end;
      end = model.cadence();
    }
    return delays;
  }

  private Pushed pushed(double[][] left, Delay delay) {
    double[] between = model.betweenColumns(delay.seconds());
    int i = (int) between[0];
    int j = i + 1;
    double b = between[1];
    double a = 1 - b;
    int k = Pushes.DELAYS;
    int l = k + 1;
    int y = l + 1;
    double late = delay.seconds() / model.cadence();
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
      double logNoise,
      int movement,
      int index,
      Strength strength,
      double base,
      List<Pushed> pushed,
      Steady[] steady) {
    double m = strength.mean();
    double v = strength.deviation() * strength.deviation();
    double u = (cellDeviation > 0 ? cellDeviation : strength.unlikeness()) * m;
    u *= u;
    double prior = base + Math.log(strength.weight()) - 0.5 * (Math.log(v * u) + m * m / v);
    double best = Double.NEGATIVE_INFINITY;
    for (Pushed at : pushed) {
      double rr = at.rr + 1 / v + unlikeness * unlikeness / u;
      double rd = at.rd + unlikeness / u;
      double dd = at.dd + 1 / u;
      double ry = at.ry + m / v;
      double determinant = rr * dd - rd * rd;
      if (!(determinant > 0)) {
        // Rounding is all that is left of the pushes: a noise far too small for these columns.
        continue;
      }
      double r = (dd * ry - rd * at.dy) / determinant;
      double d = (rr * at.dy - rd * ry) / determinant;
      double weight =
          prior + at.delay.log - 0.5 * Math.log(determinant) + 0.5 * (r * ry + d * at.dy);
      best = Math.max(best, weight);
      if (weight > least() - MARGIN) {
        highest = Math.max(highest, weight);
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
    return best;
  }

  /** What a run's pushes take from a reduced column of offsets, by strength and unlikeness. */
  static double[] taken(AxisModel model, double[][] reduced, double delay, int row) {
    double[] between = model.betweenColumns(delay);
    int i = (int) between[0];
    double b = between[1];
    double late = delay / model.cadence();
    int k = Pushes.DELAYS;
    return new double[] {
      (1 - b) * reduced[i][row] + b * reduced[i + 1][row],
      (1 - late) * reduced[k][row] + late * reduced[k + 1][row]
    };
  }
}
