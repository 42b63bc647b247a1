package io.github.roundstar.compare;

/**
 * A stated amount of change, with its reason.
 *
 * @param absolute in the figure's unit
 * @param share of the figure's size
 * @param because why that much
 */
record Tolerance(double absolute, double share, String because) {
  /** The greater of both: what a reader would call the same. */
  double greater(double level) {
    return Math.max(absolute, share * Math.abs(level));
  }

  /** Both as independent standard deviations. */
  double combined(double level) {
    return Math.hypot(absolute, share * level);
  }
}
