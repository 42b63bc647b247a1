package io.github.roundstar.motion.posterior;

/** A sum of normal densities; immutable. */
final class NormalMixture {
  private final double[] weights;
  private final double[] means;
  private final double[] deviations;

  /**
   * A sum.
   *
   * @param weights their sum is taken as 1
   */
  NormalMixture(double[] weights, double[] means, double[] deviations) {
    this.weights = weights;
    this.means = means;
    this.deviations = deviations;
  }

  double mean() {
    double sum = 0;
    double all = 0;
    for (int i = 0; i < means.length; i++) {
      sum += weights[i] * means[i];
      all += weights[i];
    }
    return sum / all;
  }

  double variance() {
    double mean = mean();
    double sum = 0;
    double all = 0;
    for (int i = 0; i < means.length; i++) {
      double off = means[i] - mean;
      sum += weights[i] * (off * off + deviations[i] * deviations[i]);
      all += weights[i];
    }
    return sum / all;
  }

  /** Probability of a value below {@code x}. */
  double below(double x) {
    double sum = 0;
    double all = 0;
    for (int i = 0; i < means.length; i++) {
      double off = x - means[i];
      sum +=
          weights[i] * (deviations[i] > 0 ? Normal.below(off / deviations[i]) : off >= 0 ? 1 : 0);
      all += weights[i];
    }
    return sum / all;
  }

  /** The value with such a probability below it. */
  double quantile(double probability) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < means.length; i++) {
      low = Math.min(low, means[i] - 9 * deviations[i]);
      high = Math.max(high, means[i] + 9 * deviations[i]);
    }
    double width = 1e-7 * (high - low);
    // The false position with halving (Illinois) keeps the root between its ends.
    double fLow = -probability;
    double fHigh = 1 - probability;
    for (int i = 0; i < 100 && high - low > width; i++) {
      double x = i % 3 == 2 ? (low + high) / 2 : (low * fHigh - high * fLow) / (fHigh - fLow);
      x = Math.max(low + width / 4, Math.min(high - width / 4, x));
      double f = below(x) - probability;
      if (f < 0) {
        low = x;
        fLow = f;
      } else {
        high = x;
        fHigh = f;
      }
    }
    return (low + high) / 2;
  }
}
