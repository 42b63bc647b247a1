package io.github.roundstar.motion;

/**
 * Play between gears, pulse by pulse: a push against the flank that they rest on first takes up the
 * play and moves nothing.
 *
 * @see "Krasnosel'skii &amp; Pokrovskii, Systems with Hysteresis (1989), section 2"
 */
final class GearPlay implements Drive {
  private final double width;
  private final double unlikeness;
  private double slackOneWay;

  /**
   * A gear pair.
   *
   * @param width what a full reversal loses, in the unit of the pushes [&ge; 0]
   * @param slack share of it that a first push east or north would lose, 0 to 1
   * @param unlikeness how much more than the mean of both directions a push east or north moves the
   *     motor, as a share; one west or south so much less
   */
  GearPlay(double width, double slack, double unlikeness) {
    this.width = width;
    this.unlikeness = unlikeness;
    this.slackOneWay = slack * width;
  }

  @Override
  public double lost(double push) {
    double strength = Drive.strength(push, unlikeness);
    double lost = Math.min(strength * Math.abs(push), push > 0 ? slackOneWay : width - slackOneWay);
    slackOneWay += push > 0 ? -lost : lost;
    return lost / strength;
  }

  @Override
  public double leap(double push) {
    return 0;
  }
}
