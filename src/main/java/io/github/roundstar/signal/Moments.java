package io.github.roundstar.signal;

/**
 * Weighted means of cosine and sine, and their second moments about the means with each other and
 * with the values, at one frequency: all that the fit of a sinusoid with a floating mean needs.
 *
 * @see "Zechmeister &amp; K&uuml;rster (2009), A&amp;A 496, 577, equations 4 to 15"
 */
record Moments(
    double meanCosine, double meanSine, double cc, double ss, double cs, double yc, double ys) {
  /** cc times ss less cs squared: at most 1/4, 0 when the sinusoid cannot be fitted. */
  double determinant() {
    return cc * ss - cs * cs;
  }

  /** Whether cosine and sine, as far as they vary, go together closer than {@code tolerance}. */
  boolean isSingular(double tolerance) {
    return !(cc > tolerance * tolerance && ss > tolerance * tolerance)
        || determinant() <= tolerance * cc * ss;
  }

  double cosine() {
    return (yc * ss - ys * cs) / determinant();
  }

  double sine() {
    return (ys * cc - yc * cs) / determinant();
  }

  /** Explained share of {@code variance}, rounding kept within 0 to 1. */
  double power(double variance) {
    return Math.max(0, Math.min(1, (yc * cosine() + ys * sine()) / variance));
  }
}
