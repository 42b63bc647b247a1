package io.github.roundstar.simulate;

import java.util.ArrayDeque;
import java.util.Deque;

/** How the loop answers an offset on one axis: a plain proportional law. */
final class PulseRule {
  private final LoopPlan.Axis settings;
  private final double arcsecPerSecond;
  private final double lowestMillis;
  private final double highestMillis;
  private final Deque<Double> waiting = new ArrayDeque<>();

  /**
   * A rule.
   *
   * @param arcsecPerSecond what the loop believes a pulse does on the sky
   * @param lowestMillis longest pulse the negative way, as a negative number or 0
   * @param highestMillis longest pulse the positive way
   */
  PulseRule(
      LoopPlan.Axis settings, double arcsecPerSecond, double lowestMillis, double highestMillis) {
    this.settings = settings;
    this.arcsecPerSecond = arcsecPerSecond;
    this.lowestMillis = lowestMillis;
    this.highestMillis = highestMillis;
  }

  /**
   * The pulse after the next frame [ms], not rounded; positive for a positive offset.
   *
   * @param offsetArcsec measured in this frame; NaN where the star was lost
   */
  double next(double offsetArcsec) {
    waiting.add(offsetArcsec);
    if (waiting.size() <= settings.delayFrames()) {
      return 0;
    }
    double answered = waiting.remove();
    if (Double.isNaN(answered) || Math.abs(answered) < settings.deadbandArcsec()) {
      return 0;
    }
    double millis = settings.gain() * answered / arcsecPerSecond * 1000;
    double limited = Math.max(lowestMillis, Math.min(highestMillis, millis));
    return Math.abs(limited) < settings.minimumPulseMillis() ? 0 : limited;
  }
}
