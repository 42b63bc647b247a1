package io.github.roundstar.motion.posterior;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
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

  /**
   * Steps over all of them, as a share, and the unlikenesses tried: on nights of little noise and
   * wide thresholds less than half of this found no more than pulses as sent did.
   */
  private static final double COARSE = 0.025;

  private static final double[] UNLIKE = {-0.03, -0.01, 0.01, 0.03};

  /** Steps of the threshold, as a share, and of the unlikeness about the best. */
  private static final double FINE = 0.01;

  /** So many of those steps of the threshold to either side, and of the unlikeness. */
  private static final int REACH = 6;

  private static final int UNLIKE_REACH = 4;

  /** How often the steps of the climb are halved. */
  private static final int HALVINGS = 4;

  /** Unlikeness that a trial stands for: so much of it is left to what is linear. */
  private static final double UNLIKE_CELL = 0.001;

  /**
   * Widest steps of the net that is summed over, as a share of the threshold; those of the
   * unlikeness are as wide. The finest are so many times as narrow: over a night with a few hundred
   * releases another push lets go every quarter of a percent.
   */
  private static final double NET = 0.02;

  private static final int FINEST = 16;

  /** Where the weight is spread over so many cells jumps average out. */
  private static final int MANY = 40;

  /** Over so many steps of the net without weight there may be weight again. */
  private static final int GAP = 2;

  /** Cells of a net at most, far above what any night needed. */
  private static final int MOST_CELLS = 2000;

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
   * @param width its step from the origin, unlike that of its unlikeness
   * @param start which part of the range of starts
   * @param net step of the threshold, as a share of it
   * @param play its middle
   * @param logPrior of the whole cell
   * @param logWeight that and the likelihood
   */
  record Cell(
      int width, int unlike, int start, double net, Play play, double logPrior, double logWeight) {
    private List<Integer> index() {
      return List.of(width, unlike);
    }

    /** The same with another start. */
    private Cell from(int other, double heavier) {
      return new Cell(
          width,
          unlike,
          other,
          net,
          new Play(play.width(), StickingSearch.start(other), play.unlikeness(), net),
          logPrior,
          logWeight + heavier);
    }

    /** Bounds of its thresholds and starts. */
    double[] bounds() {
      double half = Math.exp(net / 2);
      return new double[] {
        play.width() / half, play.width() * half, (double) start / STARTS, (start + 1.0) / STARTS
      };
    }
  }

  /** The best of the thresholds that may pass for a play of such a width, in wide steps. */
  Trial coarse(double playWidth) {
    Trial best = trial(LEAST * playWidth, 0.5, 0);
    for (double share = LEAST; share < MOST; share *= 1 + COARSE) {
      for (double unlike : UNLIKE) {
        best = best.better(trial(share * playWidth, 0.5, unlike));
      }
    }
    return best;
  }

  /** The best about a coarse one. */
  Trial closer(Play coarse) {
    Trial best = trial(coarse);
    for (int i = -REACH; i <= REACH; i++) {
      for (int j = -UNLIKE_REACH; j <= UNLIKE_REACH; j++) {
        best = best.better(trial(coarse.width() * (1 + i * FINE), coarse.start(), j * FINE));
      }
    }
    return best(best.play());
  }

  /** The best start, and from there to the best of the neighbours, with ever smaller steps. */
  Trial best(Play from) {
    Trial best = trial(from);
    for (int s = 0; s < STARTS; s++) {
      best = best.better(trial(from.width(), start(s), from.unlikeness()));
    }
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
                          at.unlikeness() + b * step * FINE));
            }
          }
        }
      } while (best != last);
    }
    return best;
  }

  /**
   * The cells of the net that have weight, from the best threshold outwards. The net is refined
   * until the weight is spread over many of them, or as far as any night needed. The start tells
   * which push lets go first and nothing of those after it, so that its parts are weighed once.
   *
   * @param cut how light a cell may be beside the heaviest [natural logarithm]
   */
  List<Cell> cells(Play best, double cut) {
    List<Cell> starts = new ArrayList<>();
    for (int s = 0; s < STARTS; s++) {
      starts.add(cell(best, 0, 0, s, NET));
    }
    Cell top = Collections.max(starts, Comparator.comparingDouble(Cell::logWeight));
    List<Cell> net = List.of(top);
    int part = 1;
    do {
      net = grown(best, net, NET / part, cut);
      part *= 2;
    } while (spread(net) < MANY && part <= FINEST);
    List<Cell> cells = new ArrayList<>();
    for (Cell cell : net) {
      for (Cell start : starts) {
        cells.add(cell.from(start.start(), start.logWeight() - top.logWeight()));
      }
    }
    return heavy(cells, cut);
  }

  /** Over how many cells the weight is spread (Kish's effective number: Survey Sampling, 1965). */
  private static double spread(List<Cell> cells) {
    double all = log(cells);
    return 1 / cells.stream().mapToDouble(c -> Math.exp(2 * (c.logWeight() - all))).sum();
  }

  /** Logarithm of the weight of all. */
  static double log(List<Cell> cells) {
    double top = cells.stream().mapToDouble(Cell::logWeight).max().orElseThrow();
    return top + Math.log(cells.stream().mapToDouble(c -> Math.exp(c.logWeight() - top)).sum());
  }

  /** Grows from the cells of a net that is twice as wide. */
  private List<Cell> grown(Play origin, List<Cell> from, double net, double cut) {
    Map<List<Integer>, Cell> known = new LinkedHashMap<>();
    PriorityQueue<Cell> open =
        new PriorityQueue<>(Comparator.comparingDouble((Cell cell) -> -cell.logWeight()));
    double highest = Double.NEGATIVE_INFINITY;
    for (Cell wide : from) {
      Cell cell = cell(origin, 2 * wide.width(), 2 * wide.unlike(), wide.start(), net);
      known.put(cell.index(), cell);
      open.add(cell);
      highest = Math.max(highest, cell.logWeight());
    }
    while (!open.isEmpty() && known.size() < MOST_CELLS) {
      Cell at = open.poll();
      if (at.logWeight() < highest - cut) {
        break;
      }
      for (int a = -GAP; a <= GAP; a++) {
        for (int b = -GAP; b <= GAP; b++) {
          if (!known.containsKey(List.of(at.width() + a, at.unlike() + b))) {
            Cell cell = cell(origin, at.width() + a, at.unlike() + b, at.start(), net);
            known.put(cell.index(), cell);
            open.add(cell);
            highest = Math.max(highest, cell.logWeight());
          }
        }
      }
    }
    return heavy(new ArrayList<>(known.values()), cut);
  }

  /** Those that have weight, by threshold. */
  private static List<Cell> heavy(List<Cell> cells, double cut) {
    double highest = cells.stream().mapToDouble(Cell::logWeight).max().orElseThrow();
    return cells.stream()
        .filter(cell -> cell.logWeight() > highest - cut)
        .sorted(
            Comparator.comparingInt(Cell::width)
                .thenComparingInt(Cell::unlike)
                .thenComparingInt(Cell::start))
        .toList();
  }

  private Cell cell(Play origin, int width, int unlike, int start, double net) {
    Play play =
        new Play(
            origin.width() * Math.exp(width * net),
            start(start),
            origin.unlikeness() + unlike * net,
            net);
    double prior = logPrior(play) + Math.log(play.width() * net * net / STARTS);
    return new Cell(width, unlike, start, net, play, prior, prior + likelihood.applyAsDouble(play));
  }

  private double logPrior(Play play) {
    return priors.logPlay(play.width()) + Priors.logNormal(play.unlikeness(), 0, Priors.ALIKE);
  }

  private static double start(int part) {
    return (part + 0.5) / STARTS;
  }

  private Trial trial(double width, double start, double unlikeness) {
    return trial(new Play(width, start, unlikeness, UNLIKE_CELL));
  }

  private Trial trial(Play play) {
    return new Trial(play, logPrior(play) + likelihood.applyAsDouble(play));
  }
}
