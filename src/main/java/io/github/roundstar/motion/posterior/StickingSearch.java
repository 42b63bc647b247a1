package io.github.roundstar.motion.posterior;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * Searches threshold, unlikeness of the directions and start of an axis that sticks, wander and
 * memory known.
 *
 * <p>Which pulse lets go hangs on the threshold to a percent or two and on the unlikeness to one,
 * and the density jumps wherever another does. So nothing is climbed by its slope and no even
 * lattice over standard deviations is laid: the search goes over a fine net, and so does the sum.
 */
final class StickingSearch {
  /**
   * Narrowest and widest threshold that passes for a play of width 1: on simulated nights with
   * thresholds of 0.2 to 2 arcsec, noise of 0.2 to 0.45 and gains of 0.3 to 0.9 it was 1.3 to 2.
   */
  private static final double LEAST = 1.15;

  private static final double MOST = 2.3;

  /** Steps of the threshold, as a share of it: over all of them, and about the best. */
  private static final double COARSE = 0.05;

  private static final double FINE = 0.01;
  private static final int REACH = 6;

  /** Unlikeness that is looked for about the best threshold, and its step. */
  private static final double MOST_UNLIKE = 0.04;

  private static final double UNLIKE_STEP = 0.01;

  /** How often the steps of the climb are halved. */
  private static final int HALVINGS = 4;

  /** Steps of the net that is summed over. */
  private static final double NET = 0.0025;

  private static final double UNLIKE_NET = 0.00125;

  /** Over so many steps of the net without weight there may be weight again. */
  private static final int GAP = 2;

  /** Points of the net at most, far above what any night needed. */
  private static final int MOST_POINTS = 4000;

  /** Parts of the range of starts; the start shows only until the axis first lets go. */
  private static final int STARTS = 7;

  private final ToDoubleFunction<Play> likelihood;
  private final Priors priors;

  /**
   * A search.
   *
   * @param likelihood logarithm of the likelihood of a threshold
   */
  StickingSearch(ToDoubleFunction<Play> likelihood, Priors priors) {
    this.likelihood = likelihood;
    this.priors = priors;
  }

  /** A threshold and the logarithm of its density. */
  record Trial(Play play, double logDensity) {
    Trial better(Trial other) {
      return other.logDensity > logDensity ? other : this;
    }
  }

  /**
   * A cell of the net.
   *
   * @param play its middle
   * @param logPrior of the whole cell
   * @param logWeight that and the likelihood
   */
  record Cell(Play play, double logPrior, double logWeight) {
    /** Bounds of its thresholds and starts. */
    double[] bounds() {
      double half = Math.exp(NET / 2);
      return new double[] {
        play.width() / half,
        play.width() * half,
        play.start() - 0.5 / STARTS,
        play.start() + 0.5 / STARTS
      };
    }
  }

  /** The best of the thresholds that may pass for a play of such a width, in wide steps. */
  Trial coarse(double playWidth) {
    Trial best = trial(LEAST * playWidth, 0.5, 0);
    for (double share = LEAST; share < MOST; share *= 1 + COARSE) {
      best = best.better(trial(share * playWidth, 0.5, 0));
    }
    return best;
  }

  /** The best in the neighbourhood. */
  Trial closer(Play from) {
    Trial best = trial(from);
    for (int i = -REACH; i <= REACH; i++) {
      for (double u = -MOST_UNLIKE; u < MOST_UNLIKE + UNLIKE_STEP / 2; u += UNLIKE_STEP) {
        best = best.better(trial(from.width() * (1 + i * FINE), from.start(), u));
      }
    }
    Play found = best.play();
    for (int s = 0; s < STARTS; s++) {
      best = best.better(trial(found.width(), (s + 0.5) / STARTS, found.unlikeness()));
    }
    return climbed(best);
  }

  /** Goes to the best of the neighbours until none is better, with ever smaller steps. */
  private Trial climbed(Trial from) {
    Trial best = from;
    double step = 1;
    for (int halving = 0; halving < HALVINGS; halving++, step /= 2) {
      Trial last;
      do {
        last = best;
        Play at = last.play();
        for (int a = -1; a <= 1; a++) {
          for (int b = -1; b <= 1; b++) {
            if (a != 0 || b != 0) {
              best =
                  best.better(
                      trial(
                          at.width() * (1 + a * step * FINE),
                          at.start(),
                          at.unlikeness() + b * step * UNLIKE_STEP));
            }
          }
        }
      } while (best != last);
    }
    return best;
  }

  /** The cells of the net that have weight, from the best one outwards. */
  List<Cell> cells(Play best, double cut) {
    List<Cell> starts = new ArrayList<>();
    double top = Double.NEGATIVE_INFINITY;
    for (int s = 0; s < STARTS; s++) {
      Cell cell = cell(best, 0, 0, (s + 0.5) / STARTS);
      starts.add(cell);
      top = Math.max(top, cell.logWeight());
    }
    List<Cell> cells = new ArrayList<>();
    double lightest = top - cut;
    for (Cell start : starts) {
      if (start.logWeight() > lightest) {
        cells.addAll(spread(best, start.play().start(), cut));
      }
    }
    return cells;
  }

  /** One step of the net from its origin. */
  private record Step(int width, int unlike, Cell cell) {}

  private List<Cell> spread(Play origin, double start, double cut) {
    Set<List<Integer>> seen = new HashSet<>();
    PriorityQueue<Step> open =
        new PriorityQueue<>(
            (a, b) -> Double.compare(b.cell().logWeight(), a.cell().logWeight()));
    List<Cell> all = new ArrayList<>();
    seen.add(List.of(0, 0));
    open.add(new Step(0, 0, cell(origin, 0, 0, start)));
    double highest = open.peek().cell().logWeight();
    all.add(open.peek().cell());
    while (!open.isEmpty() && all.size() < MOST_POINTS) {
      Step at = open.poll();
      if (at.cell().logWeight() < highest - cut) {
        break;
      }
      for (int a = -GAP; a <= GAP; a++) {
        for (int b = -GAP; b <= GAP; b++) {
          if (seen.add(List.of(at.width() + a, at.unlike() + b))) {
            Cell cell = cell(origin, at.width() + a, at.unlike() + b, start);
            open.add(new Step(at.width() + a, at.unlike() + b, cell));
            all.add(cell);
            highest = Math.max(highest, cell.logWeight());
          }
        }
      }
    }
    double lightest = highest - cut;
    all.removeIf(cell -> cell.logWeight() < lightest);
    return all;
  }

  private Cell cell(Play origin, int width, int unlike, double start) {
    Play play =
        new Play(
            origin.width() * Math.exp(width * NET),
            start,
            origin.unlikeness() + unlike * UNLIKE_NET,
            UNLIKE_NET);
    double prior = logPrior(play) + Math.log(play.width() * NET * UNLIKE_NET / STARTS);
    return new Cell(play, prior, prior + likelihood.applyAsDouble(play));
  }

  private double logPrior(Play play) {
    return priors.logPlay(play.width())
        + Priors.logNormal(play.unlikeness(), 0, priors.unlikeness());
  }

  private Trial trial(double width, double start, double unlikeness) {
    return trial(new Play(width, start, unlikeness, UNLIKE_NET));
  }

  private Trial trial(Play play) {
    return new Trial(play, logPrior(play) + likelihood.applyAsDouble(play));
  }
}
