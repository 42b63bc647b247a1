package io.github.roundstar.motion.posterior;

import io.github.roundstar.motion.posterior.Priors.Movement;
import io.github.roundstar.motion.posterior.Priors.Scale;
import io.github.roundstar.motion.posterior.Priors.Strength;
import java.util.ArrayList;
import java.util.List;

/**
 * The posterior for one wander, memory and play: noise, late share, prior of the strength and
 * movement of sinusoids are summed over; strength, unlikeness and steady columns are Gaussian given
 * those, and integrated exactly.
 */
final class Evidence {
  /** Elements so much lighter than the heaviest are dropped at once [natural logarithm]. */
  private static final double MARGIN = 1;

  /** A prior of the strength so much lighter at its best late share is not looked at further. */
  private static final double SURELY = 4;

  /** A movement or size so much lighter for one noise is light for all [natural logarithm]. */
  private static final double BY_FAR = 30;

  private static final int MOST_NOISES = 60;

  /** The least pivot of a column that the rest of noise is counted without. */
  private static final double REPEATS = 1e-10;

  private final AxisModel model;
  private final Resolution resolution;
  private final double[][][] products;
  private final int steps;
  private final double constant;
  private final double unlikeness;
  private final double unlikeDeviation;
  private final List<Element> elements = new ArrayList<>();
  private double highest = Double.NEGATIVE_INFINITY;
  private double[][] heaviest;
  private double centre;
  private double width;

  private Evidence(
      AxisModel model,
      Resolution resolution,
      double[][][] products,
      int steps,
      double logDeterminant,
      Play play) {
    this.model = model;
    this.resolution = resolution;
    this.products = products;
    this.steps = steps;
    this.constant = -0.5 * (steps * Math.log(2 * Math.PI) + logDeterminant);
    boolean own = play.unlikeCell() > 0;
    this.unlikeness = own ? 0 : play.unlikeness();
    this.unlikeDeviation = own ? play.unlikeCell() / Math.sqrt(12) : model.priors().unlikeness();
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
   */
  static Evidence of(
      AxisModel model,
      Resolution resolution,
      double[][][] products,
      WhiteFrames frames,
      Play play) {
    Evidence evidence =
        new Evidence(model, resolution, products, frames.steps(), frames.logDeterminant(), play);
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
    return highest + Math.log(sum);
  }

  private void sum() {
    place();
    double top = Double.NEGATIVE_INFINITY;
    for (int side = -1; side <= 1; side += 2) {
      double before = Double.NEGATIVE_INFINITY;
      for (int i = side < 0 ? 0 : 1; i < MOST_NOISES; i++) {
        double here = atNoise(centre + side * i * noiseStep());
        top = Math.max(top, here);
        if (here < top - resolution.elementCut() && here < before) {
          break;
        }
        before = here;
      }
    }
    elements.removeIf(e -> e.logWeight < highest - resolution.elementCut() - MARGIN);
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
    double least = Math.max(left, 1e-20 * whole[q] + 1e-300);
    double median = Math.log(model.priors().noiseMedianArcsec());
    centre =
        steps > free ? Math.max(0.5 * Math.log(least / degrees), median - 25 * deviation) : median;
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
    List<Movement> movements = model.priors().movements();
    List<Scale> scales = model.priors().scales();
    double prior =
        model.priors().logNoise(logNoise) + Math.log(noiseStep()) + constant - steps * logNoise;
    int moves = model.moving() > 0 ? movements.size() : 1;
    if (heaviest == null) {
      heaviest = new double[moves][scales.size()];
    }
    for (int m = 0; m < moves; m++) {
      double weight = model.moving() > 0 ? Math.log(movements.get(m).weight()) : 0;
      for (int g = 0; g < scales.size(); g++) {
        if (heaviest[m][g] == Double.NEGATIVE_INFINITY) {
          continue;
        }
        double here =
            atMovement(
                logNoise,
                m,
                scales.get(g).factor(),
                prior + weight + Math.log(scales.get(g).weight()));
        // What is so light beside the others for one noise is light for its neighbours.
        if (here < highest - resolution.elementCut() - BY_FAR) {
          heaviest[m][g] = Double.NEGATIVE_INFINITY;
        }
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
    double best = Double.NEGATIVE_INFINITY;
    List<Strength> strengths = model.priors().strengths();
    for (int c = 0; c < strengths.size(); c++) {
      best =
          Math.max(best, atStrength(logNoise, movement, c, strengths.get(c), base, left, steady));
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
      double deviation = deviations[i] * (i < model.scaled() ? scale : i < staying ? 1 : walk);
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

  private double atStrength(
      double logNoise,
      int movement,
      int index,
      Strength strength,
      double base,
      double[][] left,
      Steady[] steady) {
    double m = strength.mean();
    double v = strength.deviation() * strength.deviation();
    double u = unlikeDeviation * m;
    u *= u;
    double prior = base + Math.log(strength.weight()) - 0.5 * (Math.log(v * u) + m * m / v);
    double best = Double.NEGATIVE_INFINITY;
    double begin = 0;
    double end = model.partDelay();
    for (int part = 0; part < Pushes.DELAYS - 1; part++) {
      double fall =
          model.priors().logDelay(begin, model.cadence())
              - model.priors().logDelay(end, model.cadence());
      LateShare lates = LateShare.of(left, part, strength, u, 1 / fall, resolution.elementCut());
      double length = (lates.to() - lates.from()) * (end - begin);
      double likeliest = begin + lates.likeliest() * (end - begin);
      double first =
          gaussian(left, likeliest, m / v, 1 / v, 1 / u).log()
              + model.priors().logDelay(likeliest, model.cadence())
              + Math.log(length);
      if (prior + first > highest - resolution.elementCut() - SURELY) {
        double from = begin + lates.from() * (end - begin);
        best =
            Math.max(
                best,
                atDelays(
                    logNoise, movement, index, strength, prior, from, from + length, left, steady));
      }
      begin = end;
      end = model.cadence();
    }
    return best;
  }

  private double atDelays(
      double logNoise,
      int movement,
      int index,
      Strength strength,
      double prior,
      double from,
      double to,
      double[][] left,
      Steady[] steady) {
    double m = strength.mean();
    double v = strength.deviation() * strength.deviation();
    double u = unlikeDeviation * m;
    u *= u;
    double best = Double.NEGATIVE_INFINITY;
    GaussLegendre rule = GaussLegendre.of(resolution.lateNodes());
    for (int i = 0; i < rule.size(); i++) {
      double delay = rule.node(i, from, to);
      Gaussian at = gaussian(left, delay, m / v, 1 / v, 1 / u);
      double weight =
          prior
              + Math.log(rule.weight(i) * (to - from))
              + model.priors().logDelay(delay, model.cadence())
              + at.log();
      best = Math.max(best, weight);
      if (weight > highest - resolution.elementCut() - MARGIN) {
        highest = Math.max(highest, weight);
        double determinant = at.determinant();
        elements.add(
            new Element(
                weight,
                logNoise,
                movement,
                delay,
                rule.edge(i, from, to),
                rule.edge(i + 1, from, to),
                index,
                at.r(),
                at.d(),
                at.dd() / determinant,
                -at.rd() / determinant,
                at.rr() / determinant,
                steady));
      }
    }
    return best;
  }

  /** Strength and unlikeness for one delay: their means and precisions. */
  private record Gaussian(
      double r, double d, double rr, double rd, double dd, double determinant, double log) {}

  private Gaussian gaussian(
      double[][] left, double delay, double pull, double precisionR, double precisionD) {
    double[] between = model.betweenColumns(delay);
    int i = (int) between[0];
    int j = i + 1;
    double b = between[1];
    double a = 1 - b;
    int k = Pushes.DELAYS;
    int l = k + 1;
    int y = l + 1;
    double late = delay / model.cadence();
    double now = 1 - late;
    double rr = a * a * left[i][i] + 2 * a * b * left[i][j] + b * b * left[j][j];
    double rd = now * (a * left[i][k] + b * left[j][k]) + late * (a * left[i][l] + b * left[j][l]);
    double dd = now * now * left[k][k] + 2 * now * late * left[k][l] + late * late * left[l][l];
    double ry = -(a * left[i][y] + b * left[j][y]) + pull;
    double dy = -(now * left[k][y] + late * left[l][y]);
    rr += precisionR + unlikeness * unlikeness * precisionD;
    rd += unlikeness * precisionD;
    dd += precisionD;
    double determinant = rr * dd - rd * rd;
    double r = (dd * ry - rd * dy) / determinant;
    double d = (rr * dy - rd * ry) / determinant;
    return new Gaussian(
        r, d, rr, rd, dd, determinant, -0.5 * Math.log(determinant) + 0.5 * (r * ry + d * dy));
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
