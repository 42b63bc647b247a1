package io.github.roundstar.motion.posterior;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Simulation-based calibration: nights drawn from the priors themselves, the rank of the truth
 * among the draws.
 *
 * @see "Talts et al. (2018), arXiv:1804.06788; envelope of the ranks: Sailynoja, Burkner &amp;
 *     Vehtari (2022), Stat. Comput. 32, 32"
 */
public final class CalibrationTable {
  private CalibrationTable() {}

  /** One figure over many nights. */
  static final class Ranks {
    /** Shares of the draws below the truth, 0 to 1. */
    final List<Double> shares = new ArrayList<>();

    int held;
    final List<Double> errors = new ArrayList<>();

    double mean() {
      return shares.stream().mapToDouble(x -> x).average().orElse(Double.NaN);
    }

    /** Largest distance of the ranks' distribution from an even one (Kolmogorov), times root n. */
    double distance() {
      double[] sorted = shares.stream().mapToDouble(x -> x).sorted().toArray();
      int n = sorted.length;
      double largest = 0;
      for (int i = 0; i < n; i++) {
        largest =
            Math.max(largest, Math.max((i + 1.0) / n - sorted[i], sorted[i] - (double) i / n));
      }
      return largest * Math.sqrt(n);
    }
  }

  private record Told(
      ToDoubleFunction<PriorNight> truth, ToDoubleFunction<AxisPosterior.Draw> draw) {}

  static Map<String, Ranks> ranks(boolean worm, int nights, int first, int frames, int runs) {
    Map<String, Told> figures = new LinkedHashMap<>();
    figures.put("strength", new Told(n -> n.strength, d -> d.strength()));
    figures.put("one way", new Told(n -> n.oneWay, d -> d.oneWay()));
    figures.put("other way", new Told(n -> n.otherWay, d -> d.otherWay()));
    figures.put("delay", new Told(n -> n.delay, d -> d.delay()));
    figures.put("noise", new Told(n -> n.noise, d -> d.noise()));
    figures.put("memory", new Told(n -> n.memory, d -> d.memory()));
    figures.put("wander", new Told(n -> n.wander, d -> d.wander()));
    figures.put("drift", new Told(n -> n.columns[0], d -> d.columns()[0][0]));
    figures.put("bend", new Told(n -> n.columns[1], d -> d.columns()[0][1]));
    if (worm) {
      figures.put(
          "amplitude",
          new Told(
              n -> PriorNight.amplitude(n.columns), d -> PriorNight.amplitude(d.columns()[0])));
      figures.put("movement", new Told(n -> n.columns[4], d -> d.columns()[0][4]));
    } else {
      figures.put("play", new Told(n -> n.play * n.strength, d -> d.playArcsec()));
    }
    Map<String, Ranks> ranks = new LinkedHashMap<>();
    figures.keySet().forEach(name -> ranks.put(name, new Ranks()));
    for (int night = first; night < first + nights; night++) {
      PriorNight drawn = PriorNight.of(night, Priors.USUAL, worm, frames, runs);
      AxisPosterior posterior = AxisPosterior.of(drawn.model());
      int seed = night;
      figures.forEach(
          (name, figure) -> {
            double truth = figure.truth().applyAsDouble(drawn);
            double[] draws =
                posterior.draws().stream().mapToDouble(figure.draw()).sorted().toArray();
            long below = Arrays.stream(draws).filter(x -> x < truth).count();
            long same = Arrays.stream(draws).filter(x -> x == truth).count();
            // Ties are those of a play of zero; the night's number breaks them evenly.
            double tie = (seed * 0.6180339887) % 1;
            double share = (below + tie * (same + 1)) / (draws.length + 1);
            Ranks of = ranks.get(name);
            of.shares.add(share);
            of.held += share > 0.025 && share < 0.975 ? 1 : 0;
          });
    }
    return ranks;
  }

  /**
   * Writes the table.
   *
   * @param arguments worm or play; nights; first night; frames; runs
   */
  public static void main(String[] arguments) {
    boolean worm = arguments[0].equals("worm");
    int nights = Integer.parseInt(arguments[1]);
    int first = Integer.parseInt(arguments[2]);
    int frames = Integer.parseInt(arguments[3]);
    int runs = Integer.parseInt(arguments[4]);
    ranks(worm, nights, first, frames, runs)
        .forEach(
            (name, r) ->
                System.out.printf(
                    Locale.ROOT,
                    "%-12s held %d of %d, mean rank %.3f, distance %.2f%n",
                    name,
                    r.held,
                    nights,
                    r.mean(),
                    r.distance()));
  }
}
