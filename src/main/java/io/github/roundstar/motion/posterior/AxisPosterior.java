package io.github.roundstar.motion.posterior;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.posterior.Evidence.Element;
import io.github.roundstar.signal.LeastSquares;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * The posterior of one axis over its runs; immutable.
 *
 * <p>Figures that are linear in what is Gaussian come as quantiles of a mixture of {@link #DRAWS}
 * of its Gaussians, taken at even steps of weight; all others from as many joint draws, one out of
 * each.
 */
public final class AxisPosterior {
  /** Number of joint draws. */
  public static final int DRAWS = 400;

  private final AxisModel model;

  /** As many elements as draws, at even steps of weight. */
  private final List<Entry> sample;

  private final Figure[] strengths;
  private final double[] strengthMoments;
  private final double[] firstColumn;
  private final double logEvidence;
  private final Draw[] draws;
  private final List<Explanation> explanations;
  private final double playProbability;

  /** One Gaussian with where it stands on the lattice. */
  record Entry(Element element, double logWeight, Place place) {}

  /**
   * A point of wander, memory and play.
   *
   * @param even ratio and memory on their even scales, then logarithms of play and of the odds of
   *     its start
   */
  record Place(
      double[] even, Play play, double[] cell, double noiseCentre, double noiseStep, int peak) {}

  /**
   * One joint draw.
   *
   * @param strength mean of both directions [declared]
   * @param oneWay of pulses east or north, otherWay west or south [declared]
   * @param delay how long pushes wait after the exposure that asked for them [s]
   * @param noise standard deviation of the star's noise [arcsec]
   * @param memory time in which it forgets [s]
   * @param wander standard deviation of the walk over a second [arcsec]
   * @param playArcsec width of the play on the sky [arcsec]
   * @param start share of it that a first push east or north would lose
   * @param columns of each run: what its steady columns are multiplied by
   */
  public record Draw(
      double strength,
      double oneWay,
      double otherWay,
      double delay,
      double noise,
      double memory,
      double wander,
      double playArcsec,
      double start,
      double[][] columns) {}

  /**
   * A peak of the posterior.
   *
   * @param probability its weight
   * @param strength mean strength of pulses there [declared]
   * @param memory median memory there [s]
   */
  public record Explanation(double probability, double strength, double memory) {}

  AxisPosterior(
      AxisModel model,
      List<Entry> entries,
      double logEvidence,
      Draw[] draws,
      List<Explanation> explanations,
      double playProbability) {
    this.model = model;
    this.sample = sample(entries).stream().map(e -> new Entry(e.element(), 0, e.place())).toList();
    NormalMixture[] byComponent = byComponent(entries);
    this.strengthMoments = moments(byComponent[1]);
    this.strengths = new Figure[3];
    for (int direction = -1; direction <= 1; direction++) {
      strengths[direction + 1] = strength(direction, byComponent[direction + 1]);
    }
    this.firstColumn = model.columns() == 0 ? new double[2] : moments(columnMixture(entries, 0, 0));
    this.logEvidence = logEvidence;
    this.draws = draws;
    this.explanations = explanations;
    this.playProbability = playProbability;
  }

  /** The posterior, at the usual resolution. */
  public static AxisPosterior of(AxisModel model) {
    return of(model, Resolution.USUAL);
  }

  /** The posterior. */
  public static AxisPosterior of(AxisModel model, Resolution resolution) {
    return new PosteriorSearch(model, resolution).posterior();
  }

  /** Logarithm of the probability of the frames under the model, to compare models of them. */
  public double logEvidence() {
    return logEvidence;
  }

  /** Mean strength of pulses [declared]. */
  public Figure strength() {
    return strengths[1];
  }

  /** Strength of pulses east or north [declared]. */
  public Figure oneWay() {
    return strengths[2];
  }

  /** Strength of pulses west or south [declared]. */
  public Figure otherWay() {
    return strengths[0];
  }

  private Figure strength(int direction, NormalMixture byComponent) {
    NormalMixture mixture = mixture(sample, direction);
    NormalMixture prior =
        new NormalMixture(
            model.priors().strengths().stream().mapToDouble(Priors.Strength::weight).toArray(),
            model.priors().strengths().stream().mapToDouble(Priors.Strength::mean).toArray(),
            model.priors().strengths().stream().mapToDouble(Priors.Strength::deviation).toArray());
    double learned = 1 - inner(byComponent) / inner(prior);
    return new Figure(Figure.of(mixture, 1).estimate(), Math.max(0, learned));
  }

  /**
   * One Gaussian for each component of the strength's prior, from all elements: what a sample holds
   * of a component with little weight is too few to hold it against the prior.
   */
  private NormalMixture[] byComponent(List<Entry> entries) {
    double[][] weights = new double[3][model.priors().strengths().size()];
    double[][] means = new double[3][weights[0].length];
    double[][] squares = new double[3][weights[0].length];
    double top = entries.stream().mapToDouble(Entry::logWeight).max().orElseThrow();
    for (Entry entry : entries) {
      Element e = entry.element();
      double weight = Math.exp(entry.logWeight() - top);
      for (int direction = -1; direction <= 1; direction++) {
        double r = 1 + direction * entry.place().play().unlikeness();
        double mean = r * e.r() + direction * e.d();
        int c = e.strength();
        weights[direction + 1][c] += weight;
        means[direction + 1][c] += weight * mean;
        squares[direction + 1][c] +=
            weight * (mean * mean + Math.max(0, variance(e, r, direction)));
      }
    }
    NormalMixture[] all = new NormalMixture[3];
    for (int k = 0; k < all.length; k++) {
      for (int c = 0; c < weights[k].length; c++) {
        double weight = Math.max(Double.MIN_NORMAL, weights[k][c]);
        means[k][c] /= weight;
        squares[k][c] = Math.sqrt(Math.max(0, squares[k][c] / weight - means[k][c] * means[k][c]));
      }
      all[k] = new NormalMixture(weights[k], means[k], squares[k]);
    }
    return all;
  }

  /** Variance of a times the strength and b times the excess unlikeness. */
  private static double variance(Element e, double a, double b) {
    return a * a * e.rr() + 2 * a * b * e.rd() + b * b * e.dd();
  }

  private static double[] moments(NormalMixture mixture) {
    return new double[] {mixture.mean(), mixture.variance()};
  }

  /** Width of the inner nine tenths; rates of half and double stand in the tails. */
  private static double inner(NormalMixture mixture) {
    return mixture.quantile(0.95) - mixture.quantile(0.05);
  }

  /** Mean and variance of the strength over the whole mixture. */
  double[] strengthMoments() {
    return strengthMoments.clone();
  }

  /** The same of what the first column of the first run is multiplied by. */
  double[] firstColumnMoments() {
    return firstColumn.clone();
  }

  /** Strength of a direction, or of both for 0. */
  private static NormalMixture mixture(List<Entry> of, int direction) {
    double[] weights = new double[of.size()];
    double[] means = new double[of.size()];
    double[] deviations = new double[of.size()];
    double top = of.stream().mapToDouble(Entry::logWeight).max().orElseThrow();
    for (int i = 0; i < weights.length; i++) {
      Element e = of.get(i).element();
      double r = 1 + direction * of.get(i).place().play().unlikeness();
      weights[i] = Math.exp(of.get(i).logWeight() - top);
      means[i] = r * e.r() + direction * e.d();
      deviations[i] = Math.sqrt(Math.max(0, variance(e, r, direction)));
    }
    return new NormalMixture(weights, means, deviations);
  }

  private NormalMixture columnMixture(List<Entry> of, int run, int column) {
    double[] weights = new double[of.size()];
    double[] means = new double[of.size()];
    double[] deviations = new double[of.size()];
    double top = of.stream().mapToDouble(Entry::logWeight).max().orElseThrow();
    SteadyColumns.Steady last = null;
    double[][] dots = new double[Pushes.COLUMNS + 1][1];
    double own = 0;
    for (int i = 0; i < weights.length; i++) {
      Element e = of.get(i).element();
      weights[i] = Math.exp(of.get(i).logWeight() - top);
      SteadyColumns.Steady steady = e.steady()[run];
      if (column >= steady.columns()) {
        continue;
      }
      if (steady != last) {
        last = steady;
        double[] unit = new double[steady.columns()];
        unit[column] = 1;
        steady.lower().forward(unit);
        own = LeastSquares.dot(unit, unit);
        for (int c = 0; c < dots.length; c++) {
          dots[c][0] = LeastSquares.dot(unit, steady.reduced()[c]);
        }
      }
      double[] taken = Evidence.taken(model, dots, e.delay(), 0);
      means[i] = dots[Pushes.COLUMNS][0] + taken[0] * e.r() + taken[1] * e.d();
      deviations[i] = Math.sqrt(Math.max(0, own + variance(e, taken[0], taken[1])));
    }
    return new NormalMixture(weights, means, deviations);
  }

  /** What a steady column of a run is multiplied by, in the column's unit. */
  public Figure column(int run, int column) {
    double walk =
        column < model.columns() - model.moving()
            ? 1
            : model.priors().movements().stream()
                .mapToDouble(Priors.Movement::arcsecPerRootTurn)
                .max()
                .orElse(1);
    double prior = 2 * Estimate.SIGMAS_95 * model.runs().get(run).deviations()[column] * walk;
    return Figure.of(columnMixture(sample, run, column), prior);
  }

  /** How long pushes wait after the exposure that asked for them [s]. */
  public Figure delay() {
    double mean = 0;
    for (Priors.Delay delay : model.priors().delays()) {
      mean += delay.weight() * (delay.meanSeconds() + delay.meanFrames() * model.cadence());
    }
    return drawn(Draw::delay, mean * Math.log(0.975 / 0.025));
  }

  /** Standard deviation of the star's noise [arcsec]. */
  public Figure noise() {
    double d = Estimate.SIGMAS_95 * model.priors().noiseLogDeviation();
    double median = model.priors().noiseMedianArcsec();
    return drawn(Draw::noise, median * (Math.exp(d) - Math.exp(-d)));
  }

  /** Time in which the noise forgets all but 1/e of itself [s]. */
  public Figure memory() {
    List<Priors.Memory> memories = model.priors().memories();
    NormalMixture logs =
        new NormalMixture(
            memories.stream().mapToDouble(Priors.Memory::weight).toArray(),
            memories.stream().mapToDouble(m -> Math.log(m.medianSeconds())).toArray(),
            memories.stream().mapToDouble(Priors.Memory::logDeviation).toArray());
    return drawn(Draw::memory, Math.exp(logs.quantile(0.975)) - Math.exp(logs.quantile(0.025)));
  }

  /** Standard deviation of the walk over a second [arcsec]; told on a scale of decades. */
  public Figure wander() {
    Figure logs =
        drawn(
            draw -> Math.log10(draw.wander()),
            Estimate.SIGMAS_95 * model.priors().ratioDeviationLog());
    return new Figure(
        new Estimate(
            Math.pow(10, logs.estimate().value()),
            Math.pow(10, logs.estimate().lo95()),
            Math.pow(10, logs.estimate().hi95())),
        logs.learned());
  }

  /** Width of the play [arcsec]. */
  public Figure play() {
    return drawn(Draw::playArcsec, model.priors().meanPlayArcsec() * Math.log(20));
  }

  /** Probability that there is play at all. */
  public double playProbability() {
    return playProbability;
  }

  /** The peaks, the likeliest first. */
  public List<Explanation> explanations() {
    return explanations;
  }

  /** The joint draws. */
  public List<Draw> draws() {
    return List.of(draws);
  }

  /** Any figure of a draw. */
  public Figure drawn(ToDoubleFunction<Draw> figure, double priorWidth) {
    return Figure.of(Arrays.stream(draws).mapToDouble(figure).toArray(), priorWidth);
  }

  /** As many elements as draws, at even steps of weight. */
  static List<Entry> sample(List<Entry> entries) {
    double top = entries.stream().mapToDouble(Entry::logWeight).max().orElseThrow();
    double all = 0;
    for (Entry entry : entries) {
      all += Math.exp(entry.logWeight() - top);
    }
    List<Entry> sample = new ArrayList<>(DRAWS);
    double sum = 0;
    for (Entry entry : entries) {
      sum += Math.exp(entry.logWeight() - top) / all;
      while (sample.size() < DRAWS && (sample.size() + 0.5) / DRAWS <= sum) {
        sample.add(entry);
      }
    }
    while (sample.size() < DRAWS) {
      sample.add(entries.get(entries.size() - 1));
    }
    return sample;
  }
}
