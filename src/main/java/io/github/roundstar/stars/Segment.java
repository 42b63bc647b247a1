package io.github.roundstar.stars;

/**
 * Connected pixels above a threshold, with moments weighted by the smoothed values.
 *
 * @param pixels indices into the plane, x + y width
 * @param x first moment [px, from 0]
 * @param y first moment [px, from 0]
 * @param xx second moment about the first [px2]
 * @param yy second moment about the first [px2]
 * @param xy second moment about the first [px2]
 * @param peak largest smoothed value
 * @param peakIndex where it is
 * @param atEdge whether a pixel lies at the edge of the plane
 * @see "Bertin &amp; Arnouts (1996), A&amp;AS 117, 393, section 6.1 for isophotal moments"
 */
record Segment(
    int[] pixels,
    double x,
    double y,
    double xx,
    double yy,
    double xy,
    double peak,
    int peakIndex,
    boolean atEdge) {
  /** Variance of a pixel, added where the moments do not resolve the object [px2]. */
  private static final double PIXEL = 1.0 / 12;

  /**
   * Where the determinant shows that the object is a line or point no wider than a pixel, both
   * variances grow by that of a pixel.
   */
  Segment resolved() {
    boolean thin = xx * yy - xy * xy < PIXEL * PIXEL;
    return thin
        ? new Segment(pixels, x, y, xx + PIXEL, yy + PIXEL, xy, peak, peakIndex, atEdge)
        : this;
  }
}
