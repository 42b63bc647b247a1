package io.github.roundstar.motion.posterior;

/**
 * How fine the posterior is summed up.
 *
 * @param step distance of the lattice's points [standard deviations]; the sum over a Gaussian is
 *     off by 2 exp(-2 pi^2 / step^2) (Trefethen &amp; Weideman 2014, SIAM Review 56, 385)
 * @param cut points are laid until their weight falls below exp(-cut) of the largest
 * @param lateNodes points over the late share, by Gauss and Legendre
 * @param playNodes points over the start of a play that does not stand out; three times as many
 *     over its width
 * @param mostPoints points of wander and memory at most. A posterior that is wide beside the steps
 *     of its peak is summed up with wider ones
 */
public record Resolution(double step, double cut, int lateNodes, int playNodes, int mostPoints) {
  /** What a point is made of is spread over many elements, each of them light. */
  private static final double ELEMENTS = 4;

  /** How light a single element may be [natural logarithm below the heaviest]. */
  double elementCut() {
    return cut + ELEMENTS;
  }

  /** What figures are made with: off by 2e-3 of a weight. */
  public static final Resolution USUAL = new Resolution(1.6, 8, 4, 4, 100);

  /** To find peaks with. */
  static final Resolution SEARCH = new Resolution(2, 5, 3, 2, 100);

  /** To hold against other ways of integration: off by less than a millionth. */
  public static final Resolution FINE = new Resolution(0.6, 18, 24, 12, 100_000);
}
