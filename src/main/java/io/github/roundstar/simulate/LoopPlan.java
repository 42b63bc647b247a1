package io.github.roundstar.simulate;

import io.github.roundstar.model.DecDirection;

/**
 * The guide loop.
 *
 * @param ra settings in right ascension
 * @param dec settings in declination
 * @param pulseLimitMillis longest pulse, at most the cadence [ms]
 * @param decDirection ways allowed in declination
 * @param loggedInNextRow whether a pulse stands in the row after the one it answers
 */
public record LoopPlan(
    Axis ra,
    Axis dec,
    double pulseLimitMillis,
    DecDirection decDirection,
    boolean loggedInNextRow) {
  /**
   * Settings of one axis.
   *
   * @param gain share of the offset that one pulse is meant to take away
   * @param deadbandArcsec offsets below this are left alone [arcsec]
   * @param minimumPulseMillis shorter pulses are not sent [ms]
   * @param delayFrames how many frames old the offset is that a pulse answers
   */
  public record Axis(
      double gain, double deadbandArcsec, double minimumPulseMillis, int delayFrames) {}
}
