package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Welch;

/**
 * One figure before and after.
 *
 * @param figure which
 * @param before nights before
 * @param after nights after
 * @param raise how much more than stated nights of this kind scatter; a factor on variances, at
 *     least 1
 * @param commonError standard error common to all nights of a side; 0 where there is none
 */
record ChangeTest(
    Figure figure, NightSample before, NightSample after, double raise, double commonError) {
  private static final int MOST_MORE_NIGHTS = 30;

  /** Both sides' means, the common error put into the second. */
  Welch welch(int more) {
    Welch.Mean second = after.meanWith(more, raise);
    return Welch.between(
        before.meanWith(more, raise),
        new Welch.Mean(
            second.value(),
            second.variance() + commonError * commonError,
            second.degreesOfFreedom()));
  }

  /** The change with its interval at a level, such as 0.05 for 95 %. */
  Estimate change(double level) {
    return Estimate.symmetric(welch(0).difference(), welch(0).least(level));
  }

  double probability() {
    return welch(0).probability();
  }

  /** A side's mean with its own 95 % interval. */
  Estimate mean(NightSample side) {
    Welch.Mean mean = side.meanWith(0, raise);
    return Welch.between(new Welch.Mean(0, 0, 1e6), mean).interval();
  }

  double margin() {
    return figure.margin().greater((before.mean() + after.mean()) / 2);
  }

  double nightToNight() {
    return figure.nightToNight().combined((before.mean() + after.mean()) / 2);
  }

  boolean oneNight() {
    return Math.min(before.nights(), after.nights()) == 1;
  }

  /** From what size on a change counts at a level. */
  double allowance(double level) {
    return welch(0).least(level);
  }

  /**
   * Further nights on each side, as these were, after which a change of this size would either
   * count or lie inside the margin; 0 when no reasonable number would do.
   */
  int moreNights(double level) {
    int none = 0;
    int enough = MOST_MORE_NIGHTS + 1;
    while (enough - none > 1) {
      int middle = (none + enough) / 2;
      Welch then = welch(middle);
      double size = Math.abs(then.difference());
      boolean told = size > then.least(level) || size + then.least(level) < margin();
      if (told) {
        enough = middle;
      } else {
        none = middle;
      }
    }
    return enough > MOST_MORE_NIGHTS ? 0 : enough;
  }
}
