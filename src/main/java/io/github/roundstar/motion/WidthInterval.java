package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.PlayProfile.Trial;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.WanderNoise;
import java.util.List;

/**
 * How wide a play may be that may not be there, or that pulses of one direction never cross: by the
 * profile of the likelihood, as if both directions pushed alike.
 */
final class WidthInterval {
  /** What the profile falls by at the ends of a 95 % interval: half of chi-square, one degree. */
  static final double HALF_CHI_SQUARE_95 = Estimate.SIGMAS_95 * Estimate.SIGMAS_95 / 2;

  /** Where the ends are looked for first [arcsec]. */
  private static final double FIRST_REACH = 0.1;

  private static final int REACH_ROUNDS = 5;

  /** Share of its half width that an interval's end is told to. */
  private static final double REACH_ACCURACY = 0.02;

  /** Most that one round may move an end by. */
  private static final double MOST_GROWTH = 4;

  /** Widths nearer than this differ by no frame's pulse [arcsec]. */
  private static final double NARROWEST_STEP = 0.03;

  private final PlayProfile profile;
  private final Trial best;

  WidthInterval(PlayProfile profile, Trial best) {
    this.profile = profile;
    this.best = best;
  }

  /**
   * The play.
   *
   * @param longer wander and noise with a longer memory, for what its error does to the width
   */
  Backlash measured(WanderNoise longer) {
    double fall = HALF_CHI_SQUARE_95 * Math.max(1, colour());
    double below = reach(-1, fall);
    double above = reach(1, fall);
    double memory = Estimate.SIGMAS_95 * moved(longer, above / Estimate.SIGMAS_95);
    return new Backlash(
        new Estimate(
            best.width(),
            Math.max(0, best.width() - Math.hypot(below, memory)),
            best.width() + Math.hypot(above, memory)),
        best.slack(),
        profile.plain().with(profile.reconstruction().sky(best.play())),
        List.of(),
        best.wanderNoise(),
        0);
  }

  /** Whether the run would be too unlikely without the play. */
  boolean sure() {
    WanderNoise without = profile.refit(0, best.slack(), best.wanderNoise());
    double fall = best.logLikelihood() - profile.trial(0, best.slack(), without).logLikelihood();
    return fall > HALF_CHI_SQUARE_95 * Math.max(1, colour());
  }

  /**
   * How far the likeliest width moves beside another memory of the noise, by the parabola through
   * three widths.
   */
  private double moved(WanderNoise memory, double standardError) {
    double step = Math.max(NARROWEST_STEP, standardError);
    double middle = Math.max(step, best.width());
    return vertex(middle, step, memory) - vertex(middle, step, best.wanderNoise());
  }

  private double vertex(double middle, double step, WanderNoise wanderNoise) {
    PulseLikelihood likelihood = new PulseLikelihood(profile, wanderNoise);
    double low = likelihood.at(LostMotion.play(middle - step, best.slack(), 0));
    double here = likelihood.at(LostMotion.play(middle, best.slack(), 0));
    double high = likelihood.at(LostMotion.play(middle + step, best.slack(), 0));
    double bend = 2 * here - low - high;
    double shift = bend > 0 ? step * (high - low) / (2 * bend) : 0;
    return Math.max(-step, Math.min(step, shift));
  }

  /**
   * How far to one side of the best width the profile has fallen by so much, wander and noise
   * fitted anew; beyond zero where it has not fallen so far there.
   */
  private double reach(int side, double fall) {
    double reach = FIRST_REACH;
    for (int i = 0; i < REACH_ROUNDS; i++) {
      double width = Math.max(0, best.width() + side * reach);
      WanderNoise there = profile.refit(width, best.slack(), best.wanderNoise());
      double fallen =
          best.logLikelihood() - profile.trial(width, best.slack(), there).logLikelihood();
      // Not a number where no noise is left, as of offsets rounded to one value: nothing has
      // fallen.
      if (width == 0 && !(fallen >= fall)) {
        return best.width();
      }
      double factor = fallen > 0 ? Math.sqrt(fall / fallen) : MOST_GROWTH;
      if (Math.abs(factor - 1) < REACH_ACCURACY) {
        return reach;
      }
      reach *= Math.max(1 / MOST_GROWTH, Math.min(MOST_GROWTH, factor));
      reach = Math.min(PlayProfile.WIDEST, reach);
    }
    return reach;
  }

  /**
   * Variance of the likelihood's slope over the width, by that of independent steps: what seeing
   * that lasts longer than a frame adds, which the model has as white.
   */
  private double colour() {
    double low = Math.max(0, best.width() - NARROWEST_STEP);
    double[] below = residuals(low);
    double[] above = residuals(best.width() + NARROWEST_STEP);
    double[] slopes = new double[Math.min(below.length, above.length)];
    for (int i = 0; i < slopes.length; i++) {
      slopes[i] = (above[i] * above[i] - below[i] * below[i]) / 2;
    }
    double inflation = NeweyWest.inflation(slopes);
    return Double.isFinite(inflation) ? inflation : 1;
  }

  private double[] residuals(double width) {
    return PlayProfile.residuals(
        profile.behind(LostMotion.play(width, best.slack(), 0)), best.wanderNoise());
  }
}
