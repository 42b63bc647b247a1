package io.github.roundstar.motion.posterior;

/**
 * The standard normal distribution.
 *
 * @see "Hart (1968) as given by West (2005), Better approximations to cumulative normal functions,
 *     Wilmott Magazine, May, 70 (from memory): fifteen digits; Acklam's quantile, one Newton step"
 */
final class Normal {
  private Normal() {}

  /** Probability of a value below {@code z}. */
  static double below(double z) {
    double x = Math.abs(z);
    if (x > 37) {
      return z > 0 ? 1 : 0;
    }
    double e = Math.exp(-x * x / 2);
    double tail;
    if (x < 7.07106781186547) {
      double p = 3.52624965998911e-02 * x + 0.700383064443688;
      p = p * x + 6.37396220353165;
      p = p * x + 33.912866078383;
      p = p * x + 112.079291497871;
      p = p * x + 221.213596169931;
      p = p * x + 220.206867912376;
      double q = 8.83883476483184e-02 * x + 1.75566716318264;
      q = q * x + 16.064177579207;
      q = q * x + 86.7807322029461;
      q = q * x + 296.564248779674;
      q = q * x + 637.333633378831;
      q = q * x + 793.826512519948;
      q = q * x + 440.413735824752;
      tail = e * p / q;
    } else {
      double f = x + 0.65;
      f = x + 4 / f;
      f = x + 3 / f;
      f = x + 2 / f;
      f = x + 1 / f;
      tail = e / f / 2.506628274631;
    }
    return z > 0 ? 1 - tail : tail;
  }

  /** The value with such a probability below it, 0 to 1 without the ends. */
  static double quantile(double p) {
    double q = Math.min(p, 1 - p);
    double t = Math.sqrt(-2 * Math.log(q));
    // Hastings' start (Abramowitz & Stegun 26.2.23), 4.5e-4 at worst; Newton squares that.
    double x =
        t
            - (2.515517 + 0.802853 * t + 0.010328 * t * t)
                / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t);
    for (int i = 0; i < 3; i++) {
      double density = Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
      double off = (below(-x) - q) / density;
      x += off / (1 + x * off / 2);
    }
    return p < 0.5 ? -x : x;
  }
}
