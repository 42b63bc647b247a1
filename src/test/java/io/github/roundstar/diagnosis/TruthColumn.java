package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * One figure over the nights of a case: its errors, how many lie within the bound asked of it, how
 * often its interval held the truth, and whether the targets are met.
 */
final class TruthColumn {
  /** An interval of 95 % holds the truth on so many of a hundred; the nights may scatter it. */
  private static final double FEWEST_HELD = 0.88;

  private static final double MOST_HELD = 0.99;

  private final String name;
  private final List<Double> errors = new ArrayList<>();
  private double mostBias = Double.POSITIVE_INFINITY;
  private double mostMedian = Double.POSITIVE_INFINITY;

  /** Share of the nights on which a bound is to be kept. */
  private double mustKeep = 0.95;

  private boolean boundJudged = true;
  private boolean onBoundary;
  private int nights;
  private int intervals;
  private int held;
  private int bounded;
  private int within;

  TruthColumn(String name) {
    this.name = name;
  }

  /** The mean and the median of the errors are to stay below these. */
  TruthColumn atMost(double bias, double median) {
    mostBias = bias;
    mostMedian = median;
    return this;
  }

  /** A bound is to be kept on this share of the nights. */
  TruthColumn within(double share) {
    mustKeep = share;
    return this;
  }

  /** The bound is not asked of these nights; how many keep it is shown. */
  TruthColumn boundShownOnly() {
    boundJudged = false;
    return this;
  }

  /** The truth is the least value that there is, so that an interval cannot be too wide. */
  TruthColumn onBoundary() {
    onBoundary = true;
    return this;
  }

  /**
   * A night's figure.
   *
   * @param found null when the night did not give it
   * @param bound largest error allowed; NaN when none is asked
   */
  void add(Estimate found, double truth, double bound) {
    nights++;
    if (found != null) {
      intervals++;
      held += found.covers(truth) ? 1 : 0;
      error(found.value() - truth, bound);
    }
  }

  /** A figure without an interval. */
  void add(double error, double bound) {
    nights++;
    error(error, bound);
  }

  private void error(double error, double bound) {
    errors.add(error);
    bounded += Double.isNaN(bound) ? 0 : 1;
    within += Math.abs(error) <= bound ? 1 : 0;
  }

  /** Whether a target is missed. */
  boolean missed() {
    return !misses().isEmpty();
  }

  private List<String> misses() {
    List<String> misses = new ArrayList<>();
    if (boundJudged && bounded > 0 && within < Math.floor(mustKeep * bounded)) {
      misses.add("bound");
    }
    if (held < fewest()) {
      misses.add("interval too narrow");
    }
    if (held > most()) {
      misses.add("interval too wide");
    }
    if (Math.abs(bias()) > mostBias) {
      misses.add("bias");
    }
    if (median() > mostMedian) {
      misses.add("median error");
    }
    return misses;
  }

  private double fewest() {
    return Math.floor(FEWEST_HELD * intervals);
  }

  private double most() {
    return onBoundary ? intervals : Math.ceil(MOST_HELD * intervals);
  }

  /** Whether there are intervals. */
  boolean judgedByInterval() {
    return intervals > 0;
  }

  /** Whether they hold the truth too rarely or too often. */
  boolean missedByInterval() {
    return held < fewest() || held > most();
  }

  /** How probable that is when each holds the truth with this probability by itself. */
  double missesByChance(double coverage) {
    BinomialDistribution counts = new BinomialDistribution(null, intervals, coverage);
    return counts.cumulativeProbability((int) fewest() - 1)
        + 1
        - counts.cumulativeProbability((int) most());
  }

  private double bias() {
    return errors.stream().mapToDouble(e -> e).average().orElse(0);
  }

  private double median() {
    double[] sizes = errors.stream().mapToDouble(Math::abs).sorted().toArray();
    return sizes.length == 0 ? 0 : sizes[sizes.length / 2];
  }

  private String kept() {
    String kept = within + " of " + bounded;
    return boundJudged ? kept : "(" + kept + ")";
  }

  String row() {
    return String.format(
        Locale.ROOT,
        "| %s | %d of %d | %+.4f | %.4f | %.4f | %s | %s | %s |%n",
        name,
        errors.size(),
        nights,
        bias(),
        median(),
        errors.stream().mapToDouble(Math::abs).max().orElse(0),
        bounded == 0 ? "" : kept(),
        intervals == 0 ? "" : held + " of " + intervals,
        errors.isEmpty()
            ? ""
            : missed() ? "**missed: " + String.join(", ", misses()) + "**" : "met");
  }
}
