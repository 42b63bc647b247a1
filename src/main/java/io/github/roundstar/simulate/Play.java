package io.github.roundstar.simulate;

/**
 * The play operator y[n] = max(x[n] - h, min(x[n] + h, y[n-1])): the driven side moves only while a
 * flank pushes it.
 *
 * @see "Krasnosel'skii &amp; Pokrovskii (1989), Systems with Hysteresis"
 */
final class Play {
  private final double half;
  private double driven;

  /**
   * A gear pair.
   *
   * @param whole play from flank to flank, at least 0
   * @param driven where the driven side is at first, within half of {@code whole} of the driver
   */
  Play(double whole, double driven) {
    if (!(whole >= 0)) {
      throw new IllegalArgumentException("play " + whole + " is negative");
    }
    this.half = whole / 2;
    this.driven = driven;
  }

  double driven() {
    return driven;
  }

  /** Moves the driver to {@code driver}; returns where the driven side then is. */
  double follow(double driver) {
    driven = Math.max(driver - half, Math.min(driver + half, driven));
    return driven;
  }

  /** How far the driver at {@code driver} can go in a direction before a flank pushes. */
  double gap(double driver, boolean forward) {
    return forward ? driven + half - driver : driver - (driven - half);
  }
}
