package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.WhiteRegression;
import io.github.roundstar.signal.Whitening;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The likelihood of a run behind lost motion, everything else fitted, and its profile over the
 * width of a play.
 *
 * @param reconstruction what the motion is made of
 * @param plain the run as if nothing were lost
 * @param quiet which samples are free of jolts, where that is known
 * @param unlikeness how much more than the mean of both directions a push east or north moves the
 *     motor, as a share, where that is known
 */
record PlayProfile(
    Reconstruction reconstruction, AxisRun plain, Optional<JoltFree> quiet, double unlikeness) {
  /** Widths tried first [arcsec]; a play wider than the last is a loose gear, not a backlash. */
  private static final double[] WIDTHS = {
    0, 0.25, 0.5, 0.75, 1, 1.4, 1.8, 2.3, 3, 4, 5, 6.5, 8, 10, 12.5, 16, 20
  };

  /** Where the gears may rest between the flanks at first; it matters until the first reversal. */
  private static final double[] SLACKS = {0.5, 0, 0.125, 0.25, 0.375, 0.625, 0.75, 0.875, 1};

  /** Widths are told to this, a tenth of an interval at best [arcsec]. */
  private static final double WIDTH_ACCURACY = 0.002;

  /**
   * So many widths on end whose log likelihood is so far below the best end the first round: wider
   * ones only fit worse. A run of a few hours falls so far within an arcsecond of its play.
   */
  private static final int HOPELESS_WIDTHS = 3;

  private static final double HOPELESS = 100;

  private static final double WIDEST = WIDTHS[WIDTHS.length - 1];

  /** What the profile falls by at the ends of a 95 % interval: half of chi-square, one degree. */
  private static final double HALF_CHI_SQUARE_95 = Estimate.SIGMAS_95 * Estimate.SIGMAS_95 / 2;

  /** Where the ends are looked for first [arcsec]. */
  private static final double FIRST_REACH = 0.1;

  private static final int REACH_ROUNDS = 5;

  /** Share of its half width that an interval's end is told to. */
  private static final double REACH_ACCURACY = 0.02;

  /** Most that one round may move an end by. */
  private static final double MOST_GROWTH = 4;

  /** Widths nearer than this differ by no frame's pulse [arcsec]. */
  private static final double NARROWEST_STEP = 0.03;

  /** Of a run of which nothing is known yet. */
  PlayProfile(Reconstruction reconstruction, AxisRun plain) {
    this(reconstruction, plain, Optional.empty(), 0);
  }

  /** One width and flank with its likelihood. */
  private record Trial(double width, double slack, WanderNoise wanderNoise, double logLikelihood) {
    private static final Comparator<Trial> BY_LIKELIHOOD =
        Comparator.comparingDouble(Trial::logLikelihood);
  }

  Backlash search(WanderNoise start) {
    Trial best = null;
    WanderNoise known = start;
    int lost = 0;
    for (double width : WIDTHS) {
      known = refit(width, SLACKS[0], known);
      Trial trial = trial(width, SLACKS[0], known);
      best = best == null ? trial : better(best, trial);
      lost = best.logLikelihood() - trial.logLikelihood() > HOPELESS ? lost + 1 : 0;
      if (lost == HOPELESS_WIDTHS) {
        break;
      }
    }
    return near(best);
  }

  /** The likeliest play near one that was found with less knowledge. */
  Backlash near(Backlash known) {
    return near(trial(known.declaredArcsec().value(), known.slack(), known.wanderNoise().white()));
  }

  private Backlash near(Trial start) {
    Trial best = refined(start);
    WanderNoise known = refit(best.width(), best.slack(), best.wanderNoise());
    PulseLikelihood beside = new PulseLikelihood(this, known);
    Trial halfway = best;
    for (double slack : SLACKS) {
      best = better(best, trial(best.width(), slack, known, beside));
    }
    if (best.slack() != halfway.slack()) {
      best = refined(best);
    }
    WanderNoise.Remembering remembering = remembering(best);
    Trial lasting =
        remembering.clear()
            ? refined(trial(best.width(), best.slack(), remembering.model()))
            : best;
    return measured(lasting, remembering.longer());
  }

  /** Wander and noise behind the likeliest play, with the noise's memory. */
  private WanderNoise.Remembering remembering(Trial best) {
    AxisRun run = behind(best.width(), best.slack());
    MotionSeries motion = run.motion();
    double[][] columns = ResponseModel.of(run, List.of()).columns();
    return best.wanderNoise()
        .remembering(motion.seconds(), motion.startsPiece(), motion.arcsec(), columns);
  }

  private Backlash measured(Trial best, WanderNoise longer) {
    double fall = HALF_CHI_SQUARE_95 * Math.max(1, colour(best));
    double below = reach(best, -1, fall);
    double above = reach(best, 1, fall);
    double memory = Estimate.SIGMAS_95 * moved(best, longer, above / Estimate.SIGMAS_95);
    return new Backlash(
        new Estimate(
            best.width(),
            Math.max(0, best.width() - Math.hypot(below, memory)),
            best.width() + Math.hypot(above, memory)),
        best.slack(),
        plain.with(reconstruction.sky(play(best.width(), best.slack()))),
        plain.with(
            reconstruction.sky(
                play(
                    best.width() + Math.max(NARROWEST_STEP, above / Estimate.SIGMAS_95),
                    best.slack()))),
        best.wanderNoise(),
        unlikeness,
        best.logLikelihood());
  }

  /**
   * How far the likeliest width moves beside another memory of the noise, by the parabola through
   * three widths.
   */
  private double moved(Trial best, WanderNoise memory, double standardError) {
    double step = Math.max(NARROWEST_STEP, standardError);
    double middle = Math.max(step, best.width());
    return vertex(middle, step, best.slack(), memory)
        - vertex(middle, step, best.slack(), best.wanderNoise());
  }

  private double vertex(double middle, double step, double slack, WanderNoise wanderNoise) {
    PulseLikelihood likelihood = new PulseLikelihood(this, wanderNoise);
    double low = likelihood.at(play(middle - step, slack));
    double here = likelihood.at(play(middle, slack));
    double high = likelihood.at(play(middle + step, slack));
    double bend = 2 * here - low - high;
    double shift = bend > 0 ? step * (high - low) / (2 * bend) : 0;
    return Math.max(-step, Math.min(step, shift));
  }

  private AxisRun behind(double width, double slack) {
    return behind(play(width, slack));
  }

  private LostMotion play(double width, double slack) {
    return LostMotion.play(width, slack, unlikeness);
  }

  AxisRun behind(LostMotion lost) {
    AxisRun whole = plain.with(reconstruction.sky(lost));
    return quiet.map(whole::without).orElse(whole);
  }

  private WanderNoise refit(double width, double slack, WanderNoise near) {
    return refit(behind(width, slack), near);
  }

  static WanderNoise refit(AxisRun run, WanderNoise near) {
    MotionSeries motion = run.motion();
    double[][] columns = ResponseModel.of(run, List.of()).columns();
    return near.refit(motion.seconds(), motion.startsPiece(), motion.arcsec(), columns)
        .orElse(near);
  }

  /** Golden section between the neighbours of the best width. */
  private Trial refined(Trial best) {
    double low = 0;
    double high = WIDEST;
    for (double width : WIDTHS) {
      low = width < best.width() ? width : low;
      high = width > best.width() && width < high ? width : high;
    }
    WanderNoise known = best.wanderNoise();
    double slack = best.slack();
    PulseLikelihood likelihood = new PulseLikelihood(this, known);
    double ratio = (Math.sqrt(5) - 1) / 2;
    Trial left = trial(high - ratio * (high - low), slack, known, likelihood);
    Trial right = trial(low + ratio * (high - low), slack, known, likelihood);
    Trial found = better(best, better(left, right));
    while (high - low > WIDTH_ACCURACY) {
      if (left.logLikelihood() > right.logLikelihood()) {
        high = right.width();
        right = left;
        left = trial(high - ratio * (high - low), slack, known, likelihood);
        found = better(found, left);
      } else {
        low = left.width();
        left = right;
        right = trial(low + ratio * (high - low), slack, known, likelihood);
        found = better(found, right);
      }
    }
    return found;
  }

  /**
   * How far to one side of the best width the profile has fallen by so much, wander and noise
   * fitted anew; beyond zero where it has not fallen so far there.
   */
  private double reach(Trial best, int side, double fall) {
    double reach = FIRST_REACH;
    for (int i = 0; i < REACH_ROUNDS; i++) {
      double width = Math.max(0, best.width() + side * reach);
      Trial trial = trial(width, best.slack(), refit(width, best.slack(), best.wanderNoise()));
      double fallen = best.logLikelihood() - trial.logLikelihood();
      if (width == 0 && fallen < fall) {
        return best.width();
      }
      double factor = fallen <= 0 ? MOST_GROWTH : Math.sqrt(fall / fallen);
      if (Math.abs(factor - 1) < REACH_ACCURACY) {
        return reach;
      }
      reach = Math.min(WIDEST, reach * Math.max(1 / MOST_GROWTH, Math.min(MOST_GROWTH, factor)));
    }
    return reach;
  }

  /**
   * Variance of the likelihood's slope over the width, by that of independent steps: what seeing
   * that lasts longer than a frame adds, which the model has as white.
   */
  private double colour(Trial best) {
    double low = Math.max(0, best.width() - NARROWEST_STEP);
    double[] below = residuals(low, best.slack(), best.wanderNoise());
    double[] above = residuals(best.width() + NARROWEST_STEP, best.slack(), best.wanderNoise());
    double[] slopes = new double[Math.min(below.length, above.length)];
    for (int i = 0; i < slopes.length; i++) {
      slopes[i] = (above[i] * above[i] - below[i] * below[i]) / 2;
    }
    return NeweyWest.inflation(slopes);
  }

  private static Trial better(Trial one, Trial other) {
    return Stream.of(one, other).max(Trial.BY_LIKELIHOOD).orElseThrow();
  }

  /** One width and flank, wander and noise known. */
  private Trial trial(double width, double slack, WanderNoise wanderNoise) {
    return trial(width, slack, wanderNoise, new PulseLikelihood(this, wanderNoise));
  }

  private Trial trial(
      double width, double slack, WanderNoise wanderNoise, PulseLikelihood likelihood) {
    return new Trial(width, slack, wanderNoise, likelihood.at(play(width, slack)));
  }

  private static WhiteRegression fit(AxisRun run, Whitening whitening) {
    double[][] columns = ResponseModel.of(run, List.of()).columns();
    return WhiteRegression.of(whitening.apply(run.motion().arcsec()), whitening.apply(columns));
  }

  /** White steps that nothing explains. */
  private double[] residuals(double width, double slack, WanderNoise wanderNoise) {
    return residuals(behind(width, slack), wanderNoise);
  }

  static double[] residuals(AxisRun run, WanderNoise wanderNoise) {
    return fit(run, wanderNoise.whitening(run.motion().seconds(), run.motion().startsPiece()))
        .residuals();
  }
}
