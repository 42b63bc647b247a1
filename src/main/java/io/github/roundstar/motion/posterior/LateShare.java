package io.github.roundstar.motion.posterior;

import io.github.roundstar.motion.posterior.Priors.Strength;

/**
 * Where a delay has weight between two columns of pushes: in a linear model the strength of what
 * comes later stands beside the strength, and their quotient is the share of the way.
 *
 * @param from lower end, at least 0
 * @param to upper end, at most 1
 */
record LateShare(double from, double to) {
  /** A strength less certain than this many deviations tells no share. */
  private static final double CERTAIN = 8;

  static LateShare of(double[][] left, int part, Strength strength, double mean, double cut) {
    double v = strength.deviation() * strength.deviation();
    double unlike = strength.unlikeness() * strength.mean();
    unlike *= unlike;
    // Strength, late part of it, unlikeness.
    double[][] a = new double[3][3];
    int next = part + 1;
    int last = left.length - 1;
    int slope = Pushes.DELAYS;
    a[0][0] = left[part][part] + 1 / v;
    a[1][0] = left[part][next] - left[part][part];
    a[1][1] = left[next][next] - 2 * left[part][next] + left[part][part];
    a[2][0] = left[part][slope];
    a[2][1] = left[next][slope] - left[part][slope];
    a[2][2] = left[slope][slope] + 1 / unlike;
    if (!(a[1][1] > 0)) {
      return new LateShare(0, 1);
    }
    Cholesky lower = Cholesky.inPlace(a);
    double[] x = {
      -left[part][last] + strength.mean() / v,
      left[part][last] - left[next][last],
      -left[slope][last]
    };
    lower.forward(x);
    lower.backward(x);
    double[] one = {1, 0, 0};
    lower.forward(one);
    lower.backward(one);
    double[] two = {0, 1, 0};
    lower.forward(two);
    lower.backward(two);
    if (!(x[0] > CERTAIN * Math.sqrt(one[0]))) {
      return new LateShare(0, 1);
    }
    double share = x[1] / x[0];
    double sigma =
        Math.sqrt(Math.max(0, two[1] - 2 * share * one[1] + share * share * one[0])) / x[0];
    if (!(sigma > 0) || sigma > 1) {
      return new LateShare(0, 1);
    }
    double s2 = sigma * sigma;
    double reach = Math.sqrt(2 * cut) * sigma;
    if (share < 0) {
      return new LateShare(0, Math.min(1, cut / (1 / mean - share / s2)));
    }
    if (share > 1) {
      return new LateShare(Math.max(0, 1 - cut * s2 / (share - 1)), 1);
    }
    double shift = Math.min(share, s2 / mean);
    return new LateShare(Math.max(0, share - shift - reach), Math.min(1, share + reach));
  }
}
