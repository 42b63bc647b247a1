package io.github.roundstar.motion;

/** What stands between motor and tube, push by push, in one unit; it remembers what was pushed. */
sealed interface Drive permits GearPlay, StickyAxis {
  /**
   * How far the motor runs in a push before the tube begins to move [&ge; 0]; all of the push where
   * it does not. From then on the tube follows the motor until the push ends.
   *
   * @param push positive east or north
   */
  double lost(double push);

  /**
   * How far the tube leaps at the moment when it begins to move [&ge; 0].
   *
   * @param push in which it does
   */
  double leap(double push);

  /**
   * How strongly a push moves the motor, over the mean of both directions.
   *
   * @param unlikeness how much more a push east or north does, as a share; one west or south so
   *     much less
   */
  static double strength(double push, double unlikeness) {
    return push > 0 ? 1 + unlikeness : 1 - unlikeness;
  }
}
