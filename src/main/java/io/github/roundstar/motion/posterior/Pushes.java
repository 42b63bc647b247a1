package io.github.roundstar.motion.posterior;

/** What the pulses of one axis of a run push. */
@FunctionalInterface
public interface Pushes {
  /** Number of columns. */
  int COLUMNS = 5;

  /** Columns of what is pushed on balance: at once, after a part of a frame, after a whole one. */
  int DELAYS = 3;

  /**
   * Five columns at the run's samples, for pulses of the declared strength behind a play, or by an
   * axis that sticks [arcsec]: how far they have pushed on balance, east or north positive, if they
   * act at once; if they wait for {@link AxisModel#partDelay}; if they wait for a whole frame; and
   * how the first and the third change with the unlikeness of the directions.
   *
   * @param width what a full reversal loses, or what the motor must be ahead by to move an axis
   *     that sticks, in declared pushes [arcsec]
   * @param start share of it that a first push east or north would lose, 0 to 1; 0 where an axis
   *     that sticks is about to let go west or south, 1 east or north
   * @param unlikeness how much more than the mean of both directions a push east or north moves, as
   *     a share; one west or south so much less
   */
  double[][] columns(double width, double start, double unlikeness);

  /** No pulse at all. */
  static Pushes none(int samples) {
    return (width, start, unlikeness) -> new double[COLUMNS][samples];
  }
}
