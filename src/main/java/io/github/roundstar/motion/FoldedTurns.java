package io.github.roundstar.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The motion of all runs folded on one turn of a gear, other gears and drift taken out and every
 * turn about its own mean, so that wander from turn to turn does not blur the curve. Immutable.
 */
public final class FoldedTurns {
  /** Bins per turn. */
  public static final int BINS = 48;

  /** A turn counts when at least this share of its bins has frames. */
  private static final double FILLED = 0.75;

  private final List<double[]> turns;
  private final double[] mean;
  private final double[] spread;

  private FoldedTurns(List<double[]> turns) {
    this.turns = turns;
    this.mean = new double[BINS];
    this.spread = new double[BINS];
    for (int bin = 0; bin < BINS; bin++) {
      int at = bin;
      double[] present = turns.stream().mapToDouble(t -> t[at]).filter(Double::isFinite).toArray();
      mean[bin] = Arrays.stream(present).average().orElse(Double.NaN);
      double centre = mean[bin];
      double squares = Arrays.stream(present).map(v -> (v - centre) * (v - centre)).sum();
      spread[bin] = present.length < 2 ? Double.NaN : Math.sqrt(squares / (present.length - 1));
    }
  }

  static FoldedTurns of(SharedFit fit, int family) {
    List<double[]> turns = new ArrayList<>();
    ToneModel model = fit.model();
    double[] parameters = fit.parameters();
    double rate = parameters[fit.layout().rate(family)];
    List<LevelledMotion> levelled = LevelledMotion.of(fit);
    for (int r = 0; r < levelled.size(); r++) {
      double[] curve = model.tones(parameters, family, r);
      double shift = model.shift(parameters, family, r);
      addTurns(levelled.get(r), curve, shift, rate, turns);
    }
    return new FoldedTurns(turns);
  }

  /** Number of turns that are complete enough to count. */
  public int turns() {
    return turns.size();
  }

  /** Mean of one turn in one bin [arcsec at the axis]; NaN where it has no frame. */
  public double turn(int turn, int bin) {
    return turns.get(turn)[bin];
  }

  /** Mean over the turns [arcsec at the axis]; NaN where no turn has a frame. */
  public double mean(int bin) {
    return mean[bin];
  }

  /** Standard deviation between turns [arcsec]; NaN for fewer than two. */
  public double spread(int bin) {
    return spread[bin];
  }

  private static void addTurns(
      LevelledMotion levelled, double[] curve, double shift, double rate, List<double[]> turns) {
    double[] seconds = levelled.run().phaseSeconds();
    int begin = 0;
    while (begin < seconds.length) {
      double number = Math.floor(rate * (seconds[begin] - shift) / (2 * Math.PI));
      double[] sum = new double[BINS];
      int[] count = new int[BINS];
      double left = 0;
      int i = begin;
      for (; i < seconds.length; i++) {
        double turn = rate * (seconds[i] - shift) / (2 * Math.PI) - number;
        if (turn >= 1 && i > begin) {
          break;
        }
        int bin = Math.min(BINS - 1, (int) (turn * BINS));
        sum[bin] += levelled.leftArcsec(i) + curve[i];
        left += levelled.leftArcsec(i);
        count[bin]++;
      }
      addIfFilled(sum, count, left / (i - begin), turns);
      begin = i;
    }
  }

  private static void addIfFilled(double[] sum, int[] count, double level, List<double[]> turns) {
    long filled = Arrays.stream(count).filter(c -> c > 0).count();
    if (filled >= FILLED * BINS) {
      double[] turn = new double[BINS];
      for (int bin = 0; bin < BINS; bin++) {
        turn[bin] = count[bin] == 0 ? Double.NaN : sum[bin] / count[bin] - level;
      }
      turns.add(turn);
    }
  }
}
