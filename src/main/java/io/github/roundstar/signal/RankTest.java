package io.github.roundstar.signal;

import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Whether the values of one sample tend to lie above those of another, whatever their distribution.
 *
 * @param above pairs in which the first sample's value is the greater, ties counting half
 * @param probability that chance alone gives so uneven a count either way: exact without ties up to
 *     {@value #MOST_EXACT} values, else from the normal approximation with ties and continuity
 *     corrected
 * @see "Mann &amp; Whitney (1947), Annals of Mathematical Statistics 18, 50"
 */
public record RankTest(double above, double probability) {
  /** Beyond this the approximation is as good as the exact count. */
  static final int MOST_EXACT = 40;

  /** Compares two samples of at least one value each. */
  public static RankTest between(double[] first, double[] second) {
    Check.atLeast("number of values", Math.min(first.length, second.length), 1);
    double above = 0;
    boolean ties = false;
    for (double x : first) {
      for (double y : second) {
        above += x > y ? 1 : x == y ? 0.5 : 0;
        ties |= x == y;
      }
    }
    boolean exact = !ties && first.length + second.length <= MOST_EXACT;
    double probability =
        exact ? exact(above, first.length, second.length) : asymptotic(above, first, second);
    return new RankTest(above, probability);
  }

  static double exact(double above, int n, int m) {
    double[] counts = counts(n, m);
    double total = Arrays.stream(counts).sum();
    int less = (int) Math.min(above, (double) n * m - above);
    double tail = 0;
    for (int u = 0; u <= less; u++) {
      tail += counts[u];
    }
    return Math.min(1, 2 * tail / total);
  }

  /** How many orderings of n and m values give each count: coefficients of the Gauss binomial. */
  private static double[] counts(int n, int m) {
    double[] counts = new double[n * m + 1];
    counts[0] = 1;
    for (int i = 1; i <= n; i++) {
      for (int u = counts.length - 1; u >= m + i; u--) {
        counts[u] -= counts[u - m - i];
      }
      for (int u = i; u < counts.length; u++) {
        counts[u] += counts[u - i];
      }
    }
    return counts;
  }

  static double asymptotic(double above, double[] first, double[] second) {
    double n = first.length;
    double m = second.length;
    double all = n + m;
    double variance = n * m / 12 * (all + 1 - ties(first, second) / (all * (all - 1)));
    if (!(variance > 0)) {
      return 1;
    }
    double z = (Math.abs(above - n * m / 2) - 0.5) / Math.sqrt(variance);
    return Math.min(1, 2 * new NormalDistribution(null, 0, 1).cumulativeProbability(-z));
  }

  /** Sum of t cubed less t over groups of t equal values. */
  private static double ties(double[] first, double[] second) {
    double[] sorted = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, sorted, first.length, second.length);
    Arrays.sort(sorted);
    double sum = 0;
    for (int i = 0, end; i < sorted.length; i = end) {
      end = i + 1;
      while (end < sorted.length && sorted[end] == sorted[i]) {
        end++;
      }
      double t = end - i;
      sum += t * t * t - t;
    }
    return sum;
  }
}
