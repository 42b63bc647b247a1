package io.github.roundstar.motion;

/**
 * An axis that sticks, push by push: the tube stays until the motor is a threshold ahead of it,
 * then leaps to where the motor is and follows while the push lasts. When the push ends it sticks
 * again, and nothing is withheld.
 *
 * @see "Armstrong-Helouvry, Dupont &amp; Canudas de Wit (1994), Automatica 30, 1083, for stick and
 *     slip; a threshold and no friction in motion is its simplest case"
 */
final class StickyAxis implements Drive {
  private final double threshold;
  private final double unlikeness;
  private double withheld;

  /**
   * An axis.
   *
   * @param threshold what the motor must be ahead by, in the unit of the pushes [&ge; 0]
   * @param withheld share of it that the motor is ahead by at first, east or north positive, -1..1
   * @param unlikeness how much more than the mean of both directions a push east or north moves the
   *     motor, as a share; one west or south so much less
   */
  StickyAxis(double threshold, double withheld, double unlikeness) {
    this.threshold = threshold;
    this.unlikeness = unlikeness;
    this.withheld = withheld * threshold;
  }

  @Override
  public double lost(double push) {
    double wait = threshold - Math.signum(push) * withheld;
    double strength = Drive.strength(push, unlikeness);
    if (wait >= strength * Math.abs(push)) {
      withheld += strength * push;
      return Math.abs(push);
    }
    withheld = 0;
    return wait / strength;
  }

  @Override
  public double leap(double push) {
    return threshold / Drive.strength(push, unlikeness);
  }
}
