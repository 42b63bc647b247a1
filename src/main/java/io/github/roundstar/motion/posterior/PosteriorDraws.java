package io.github.roundstar.motion.posterior;

import io.github.roundstar.motion.posterior.AxisPosterior.Draw;
import io.github.roundstar.motion.posterior.AxisPosterior.Entry;
import io.github.roundstar.motion.posterior.AxisPosterior.Place;
import io.github.roundstar.motion.posterior.Evidence.Element;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Draws from the mixture. What the lattice holds in steps is drawn between its points, by a kernel
 * as wide as a cell about points drawn towards their mean, so that the variance stays (Liu &amp;
 * West 2001).
 */
final class PosteriorDraws {
  private static final long SEED = 20090312;

  private final PosteriorSearch search;
  private final List<Entry> entries;
  private final double[] kernel;
  private final int peaks;

  PosteriorDraws(
      PosteriorSearch search,
      List<Entry> entries,
      double[] kernel,
      double[] playKernel,
      int peaks) {
    this.search = search;
    this.entries = entries;
    this.kernel = new double[] {kernel[0], kernel[1], playKernel[0], playKernel[1]};
    this.peaks = peaks;
  }

  Draw[] draws() {
    List<Entry> sample = AxisPosterior.sample(entries);
    int k = search.model().columns();
    double[][] normals = normals(k * search.model().runs().size() + 8);
    double[][][] moments = moments();
    Draw[] draws = new Draw[AxisPosterior.DRAWS];
    for (int i = 0; i < AxisPosterior.DRAWS; i++) {
      draws[i] = draw(sample.get(i), normals, i, moments);
    }
    return draws;
  }

  private Draw draw(Entry entry, double[][] normals, int i, double[][][] moments) {
    Element e = entry.element();
    Place place = entry.place();
    // An axis that is turned round draws the mirror image.
    SteadyColumns.Steady first = e.steady()[0];
    double mirrored = first.columns() > 0 && first.reduced()[Pushes.COLUMNS][0] < 0 ? -1 : 1;
    double root = Math.sqrt(e.rr());
    double r = e.r() + root * normals[0][i];
    double d =
        e.d()
            + e.rd() / root * normals[0][i]
            + Math.sqrt(Math.max(0, e.dd() - e.rd() * e.rd() / e.rr())) * mirrored * normals[1][i];
    double[] even = new double[4];
    for (int j = 0; j < 4; j++) {
      double[] m = moments[place.peak()][j];
      even[j] = spreadOut(place.even()[j], m[0], m[1], kernel[j], normals[2 + j][i]);
    }
    double noiseKernel = place.noiseStep() * place.noiseStep() / 12;
    double[] ofNoise = moments[place.peak()][4];
    double noise =
        Math.exp(spreadOut(e.logNoise(), ofNoise[0], ofNoise[1], noiseKernel, normals[6][i]));
    double logRatio = search.ratios().number(within(search.ratios(), even[0]));
    double memory = Math.exp(search.memories().number(within(search.memories(), even[1])));
    boolean plays = place.play().width() > 0;
    double width = plays ? Math.exp(even[2]) : 0;
    double start = plays ? 1 / (1 + Math.exp(-even[3])) : 0.5;
    double[] cell = place.cell();
    if (cell != null) {
      width = cell[0] + (cell[1] - cell[0]) * Normal.below(normals[4][i]);
      start = cell[2] + (cell[3] - cell[2]) * Normal.below(normals[5][i]);
    }
    double unlike = place.play().unlikeness();
    return new Draw(
        r,
        (1 + unlike) * r + d,
        (1 - unlike) * r - d,
        e.delayFrom() + (e.delayTo() - e.delayFrom()) * Normal.below(normals[7][i]),
        noise,
        memory,
        noise * Math.sqrt(Math.pow(10, logRatio)),
        width * r,
        start,
        columns(e, r, d, normals, i, mirrored));
  }

  private double[][] columns(
      Element e, double r, double d, double[][] normals, int i, double mirrored) {
    double[][] columns = new double[e.steady().length][];
    int next = 8;
    for (int run = 0; run < columns.length; run++) {
      SteadyColumns.Steady steady = e.steady()[run];
      double[][] c = steady.reduced();
      double[] x = new double[steady.columns()];
      for (int j = 0; j < x.length; j++) {
        double[] taken = Evidence.taken(search.model(), c, e.delay(), j);
        // Those behind are made of the curve as it was seen, and turn round with it.
        boolean turned = j < search.model().scaled();
        x[j] =
            c[Pushes.COLUMNS][j]
                + r * taken[0]
                + d * taken[1]
                + (turned ? mirrored : 1) * normals[next + j][i];
      }
      steady.lower().backward(x);
      columns[run] = Arrays.copyOf(x, search.model().columns());
      next += search.model().columns();
    }
    return columns;
  }

  private static double within(EvenScale scale, double even) {
    return scale.holds(even) ? even : even < 0 ? 0 : scale.end();
  }

  private static double spreadOut(
      double x, double mean, double variance, double kernel, double normal) {
    if (Double.isNaN(x)) {
      return x;
    }
    double drawn = variance > kernel ? Math.sqrt(1 - kernel / variance) : 0;
    return mean + drawn * (x - mean) + Math.sqrt(kernel) * normal;
  }

  /** For each peak mean and variance of ratio, memory, play, start and noise. */
  private double[][][] moments() {
    double top = entries.stream().mapToDouble(Entry::logWeight).max().orElseThrow();
    double[][][] sums = new double[peaks][5][3];
    for (Entry entry : entries) {
      double weight = Math.exp(entry.logWeight() - top);
      double[] even = entry.place().even();
      for (int j = 0; j < 5; j++) {
        double x = j < 4 ? even[j] : entry.element().logNoise();
        if (!Double.isNaN(x)) {
          double[] s = sums[entry.place().peak()][j];
          s[0] += weight;
          s[1] += weight * x;
          s[2] += weight * x * x;
        }
      }
    }
    double[][][] moments = new double[peaks][5][2];
    for (int p = 0; p < peaks; p++) {
      for (int j = 0; j < 5; j++) {
        double[] s = sums[p][j];
        if (s[0] > 0) {
          moments[p][j][0] = s[1] / s[0];
          moments[p][j][1] = Math.max(0, s[2] / s[0] - moments[p][j][0] * moments[p][j][0]);
        }
      }
    }
    return moments;
  }

  /** Normal quantiles at even steps, shuffled for each number (a Latin square), always the same. */
  private static double[][] normals(int numbers) {
    double[] even = new double[AxisPosterior.DRAWS];
    for (int i = 0; i < AxisPosterior.DRAWS; i++) {
      even[i] = Normal.quantile((i + 0.5) / AxisPosterior.DRAWS);
    }
    SplittableRandom random = new SplittableRandom(SEED);
    double[][] normals = new double[numbers][];
    for (int j = 0; j < numbers; j++) {
      normals[j] = even.clone();
      for (int i = AxisPosterior.DRAWS - 1; i > 0; i--) {
        int other = random.nextInt(i + 1);
        double kept = normals[j][i];
        normals[j][i] = normals[j][other];
        normals[j][other] = kept;
      }
    }
    return normals;
  }
}
