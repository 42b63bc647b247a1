package io.github.roundstar.stars;

import java.util.OptionalDouble;

/**
 * The radius of the circle that holds half of a star's light: a width that needs no model of the
 * image, and so holds for stars out of focus too.
 *
 * @see "Source Extractor's FLUX_RADIUS"
 */
final class HalfLight {
  private static final int PARTS = 5;
  private static final int STEPS = 40;

  private HalfLight() {}

  /**
   * Finds it by halving.
   *
   * @param x centre [px, from 0]
   * @param y centre [px, from 0]
   * @param flux all light of the star [adu]
   * @param most largest radius [px]
   * @return nothing where even the largest circle holds less than half
   */
  static OptionalDouble radius(Plane plane, double x, double y, double flux, double most) {
    double low = 0;
    double high = most;
    if (within(plane, x, y, most) < flux / 2) {
      return OptionalDouble.empty();
    }
    for (int step = 0; step < STEPS; step++) {
      double middle = (low + high) / 2;
      if (within(plane, x, y, middle) < flux / 2) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return OptionalDouble.of((low + high) / 2);
  }

  /** Light inside a circle; pixels on its rim count by their parts inside. */
  private static double within(Plane plane, double x, double y, double radius) {
    double sum = 0;
    for (int py = (int) Math.max(0, y - radius - 1);
        py <= Math.min(plane.height() - 1, y + radius + 1);
        py++) {
      for (int px = (int) Math.max(0, x - radius - 1);
          px <= Math.min(plane.width() - 1, x + radius + 1);
          px++) {
        double value = plane.at(px, py);
        if (Double.isFinite(value)) {
          sum += value * share(px - x, py - y, radius);
        }
      }
    }
    return sum;
  }

  private static double share(double dx, double dy, double radius) {
    double distance = Math.hypot(dx, dy);
    if (distance > radius + 0.75) {
      return 0;
    }
    if (distance < radius - 0.75) {
      return 1;
    }
    int inside = 0;
    for (int i = 0; i < PARTS; i++) {
      for (int j = 0; j < PARTS; j++) {
        double ox = (i + 0.5) / PARTS - 0.5;
        double oy = (j + 0.5) / PARTS - 0.5;
        inside += Math.hypot(dx + ox, dy + oy) <= radius ? 1 : 0;
      }
    }
    return (double) inside / (PARTS * PARTS);
  }
}
