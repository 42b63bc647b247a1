package io.github.roundstar.stars;

import java.util.Arrays;

/** What is left of the background in a ring around a star: the median of its pixels. */
final class SkyRing {
  private static final double INNER_SIGMAS = 5;
  private static final double WIDTH_PIXELS = 6;
  private static final int MOST_SAMPLES = 400;
  private static final int FEWEST_SAMPLES = 30;

  private SkyRing() {}

  static double level(Plane plane, Segment star) {
    double inner = INNER_SIGMAS * Math.sqrt(Math.max(star.xx(), star.yy())) + 2;
    double outer = inner + WIDTH_PIXELS;
    double[] values = new double[MOST_SAMPLES];
    int n = 0;
    int stride = Math.max(1, (int) (Math.PI * (outer + inner) * WIDTH_PIXELS / MOST_SAMPLES)) | 1;
    int seen = 0;
    for (int y = (int) Math.max(0, star.y() - outer);
        y <= Math.min(plane.height() - 1, star.y() + outer);
        y++) {
      for (int x = (int) Math.max(0, star.x() - outer);
          x <= Math.min(plane.width() - 1, star.x() + outer);
          x++) {
        double dx = x - star.x();
        double dy = y - star.y();
        double square = dx * dx + dy * dy;
        boolean inRing = square >= inner * inner && square <= outer * outer;
        if (inRing && plane.sampling().takes(x, y) && seen++ % stride == 0 && n < MOST_SAMPLES) {
          double value = plane.at(x, y);
          if (Double.isFinite(value)) {
            values[n++] = value;
          }
        }
      }
    }
    if (n < FEWEST_SAMPLES) {
      return 0;
    }
    Arrays.sort(values, 0, n);
    return (values[(n - 1) / 2] + values[n / 2]) / 2;
  }
}
