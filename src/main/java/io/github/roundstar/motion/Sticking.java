package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.WanderNoise;

/**
 * An axis that sticks: it withholds pushes until they add up to a threshold, then lets go whole.
 *
 * <p>It is told from play by the likelihood of the same run behind either, everything else - drift,
 * bend, strength of pulses, wander, noise - fitted anew. Which pulse lets go hangs on the threshold
 * and on how unlike both directions are to a percent or so; both are searched.
 *
 * @param declaredArcsec threshold with its 95 % interval, in pulses of the declared strength
 * @param lost the axis that sticks so
 * @param run motion behind it
 */
public record Sticking(Estimate declaredArcsec, LostMotion lost, AxisRun run) {
  /**
   * What the log likelihood must be higher by than with play, and than with nothing lost. Of 100
   * simulated nights each with play of 0, 0.7, 1.5 and 3 arcsec none came near it; of 100 each with
   * sticking of 0.5 or 1 arcsec and noise of 0.2, 0.3 and 0.45 arcsec all exceeded it.
   */
  static final double CLEAR_MARGIN = 10;

  static final String UNDECIDED =
      "motion is lost, but whether the gears have play or the axis sticks cannot be told from this"
          + " log";

  static final String PLAY = "play of the gears describes the lost motion better than sticking";

  static final String NOTHING_LOST = "no lost motion stands out, by play or by sticking";

  /**
   * Narrowest and widest threshold that passes for a play of width 1: on simulated nights with
   * thresholds of 0.2 to 2 arcsec, noise of 0.2 to 0.45 and gains of 0.3 to 0.9 it was 1.3 to 2.
   */
  private static final double LEAST = 1.15;

  private static final double MOST = 2.3;

  /**
   * Steps of the threshold, as a share of it: first, and in the neighbourhood of the best. Two
   * percent off the threshold the likelihood still is far above that of no lost motion.
   */
  private static final double COARSE = 0.05;

  private static final double FINE = 0.01;
  private static final int REACH = 6;

  /**
   * The best of the first thresholds must gain this share of what play gains. On simulated nights
   * that stick it gained 0.57 to 3 times as much, on those with play no more than 0.22. Where play
   * gains less than the second number all is looked at.
   */
  private static final double PROMISING = 1 / 3.0;

  private static final double LITTLE = 100;

  /** Unlikeness of the directions that is looked for, and its step. */
  private static final double MOST_UNLIKE = 0.04;

  private static final double UNLIKE_STEP = 0.01;
  private static final int HALVINGS = 4;

  /** Where the motor may stand at first, as a share of the threshold. */
  private static final double[] STARTS = {-0.75, -0.5, -0.25, 0.25, 0.5, 0.75};

  /**
   * What the profile falls by at the ends of a 95 % interval. The likelihood is that of a
   * threshold, which jumps wherever another pulse lets go, and no parabola: -ln(1 - sqrt(0.95)).
   *
   * @see "Hansen (2000), Econometrica 68, 575, theorem 2, from memory"
   */
  private static final double FALL_95 = -Math.log(1 - Math.sqrt(0.95));

  /** Steps on end below that fall after which an interval ends. */
  private static final int BELOW = 4;

  private static final double INTERVAL_STEP = 0.0025;
  private static final double INTERVAL_UNLIKE = 0.00125;
  private static final int UNLIKE_REACH = 4;
  private static final int MOST_STEPS = 40;

  /**
   * Compares.
   *
   * @param profile the likelihood that the play was found with
   * @param play the likeliest play
   * @return none, with the reason, unless the axis surely sticks
   */
  static Answer<Sticking> of(PlayProfile profile, Backlash play) {
    return play.declaredArcsec().lo95() > 0
        ? new Search(profile, play).found()
        : Answer.none(NOTHING_LOST);
  }

  /** Why an axis does not surely stick, when play was looked for once more without jolts. */
  static String because(String before, Backlash again) {
    if (again.declaredArcsec().lo95() <= 0) {
      return NOTHING_LOST;
    }
    return before.equals(NOTHING_LOST) ? UNDECIDED : before;
  }

  /**
   * The threshold [arcsec at the axis]: the declared one times the strength that pulses were found
   * to have behind it, whose interval it holds.
   */
  public Estimate arcsec(Estimate strength) {
    return LostMotion.measured(declaredArcsec, strength);
  }

  /** One axis with its likelihood. */
  private record Trial(LostMotion lost, double logLikelihood) {
    double over(Trial other) {
      return logLikelihood - other.logLikelihood;
    }

    Trial better(Trial other) {
      return other.logLikelihood > logLikelihood ? other : this;
    }
  }

  private static final class Search {
    private final PlayProfile profile;
    private final LostMotion play;
    private WanderNoise wanderNoise;
    private PulseLikelihood likelihood;

    Search(PlayProfile profile, Backlash play) {
      this.profile = profile;
      this.play = play.lost();
      take(play.wanderNoise());
    }

    private void take(WanderNoise known) {
      wanderNoise = known;
      likelihood = new PulseLikelihood(profile, known);
    }

    Answer<Sticking> found() {
      Trial nothing = trial(LostMotion.NONE);
      Trial best = nothing;
      for (double share = LEAST; share < MOST; share *= 1 + COARSE) {
        best = best.better(trial(share * play.arcsec(), 0, 0));
      }
      double ofPlay = trial(play).over(nothing);
      if (best == nothing || best.over(nothing) < PROMISING * (ofPlay - LITTLE)) {
        return Answer.none(PLAY);
      }
      best = climbed(nearby(best), FINE, UNLIKE_STEP);
      take(PlayProfile.refit(profile.behind(best.lost()), wanderNoise));
      best = climbed(started(trial(best.lost())), FINE, UNLIKE_STEP);
      double margin = refitted(best.lost()) - Math.max(refitted(play), refitted(LostMotion.NONE));
      double colour = Math.max(1, colour(best.lost()));
      if (margin < CLEAR_MARGIN * colour) {
        return Answer.none(margin < -CLEAR_MARGIN * colour ? PLAY : UNDECIDED);
      }
      double fall = FALL_95 * colour;
      return Answer.of(
          new Sticking(
              new Estimate(best.lost().arcsec(), end(best, -1, fall), end(best, 1, fall)),
              best.lost(),
              profile.plain().with(profile.reconstruction().sky(best.lost()))));
    }

    private Trial nearby(Trial coarse) {
      Trial best = coarse;
      double s = coarse.lost().arcsec();
      for (int i = -REACH; i <= REACH; i++) {
        for (double e = -MOST_UNLIKE; e < MOST_UNLIKE + UNLIKE_STEP / 2; e += UNLIKE_STEP) {
          best = best.better(trial(s * (1 + i * FINE), 0, e));
        }
      }
      return best;
    }

    private Trial started(Trial found) {
      Trial best = found;
      for (double start : STARTS) {
        best = best.better(trial(found.lost().arcsec(), start, found.lost().unlikeness()));
      }
      return best;
    }

    /** Goes to the best of the neighbours until none is better, with ever smaller steps. */
    private Trial climbed(Trial from, double step, double unlike) {
      Trial best = from;
      for (int i = 0; i < HALVINGS; i++) {
        double factor = Math.pow(0.5, i);
        Trial last;
        do {
          last = best;
          for (int a = -1; a <= 1; a++) {
            for (int b = -1; b <= 1; b++) {
              if (a != 0 || b != 0) {
                best = best.better(beside(last, a * factor * step, b * factor * unlike));
              }
            }
          }
        } while (best != last);
      }
      return best;
    }

    private Trial beside(Trial trial, double share, double unlike) {
      LostMotion lost = trial.lost();
      return trial(lost.arcsec() * (1 + share), lost.start(), lost.unlikeness() + unlike);
    }

    /**
     * The last threshold on one side before the profile stays below, the unlikeness fitted anew.
     */
    private double end(Trial best, int side, double fall) {
      double end = best.lost().arcsec();
      int below = 0;
      for (int i = 1; i <= MOST_STEPS && below < BELOW; i++) {
        Trial here = beside(best, side * i * INTERVAL_STEP, 0);
        for (int j = 1; j <= UNLIKE_REACH; j++) {
          here = here.better(beside(best, side * i * INTERVAL_STEP, -j * INTERVAL_UNLIKE));
          here = here.better(beside(best, side * i * INTERVAL_STEP, j * INTERVAL_UNLIKE));
        }
        below++;
        if (here.logLikelihood() > best.logLikelihood() - fall) {
          below = 0;
          end = here.lost().arcsec();
        }
      }
      return end + side * INTERVAL_STEP * best.lost().arcsec();
    }

    /** How much more the likelihood's slope varies than if the residuals were independent. */
    private double colour(LostMotion lost) {
      double[] here = PlayProfile.residuals(profile.behind(lost), wanderNoise);
      double[] beside = PlayProfile.residuals(profile.behind(lost.times(1 + FINE)), wanderNoise);
      double[] slopes = new double[Math.min(here.length, beside.length)];
      for (int i = 0; i < slopes.length; i++) {
        slopes[i] = here[i] * (beside[i] - here[i]);
      }
      return NeweyWest.inflation(slopes);
    }

    private Trial trial(double arcsec, double start, double unlikeness) {
      return trial(LostMotion.sticking(arcsec, start, unlikeness));
    }

    private Trial trial(LostMotion lost) {
      return new Trial(lost, likelihood.at(lost));
    }

    private double refitted(LostMotion lost) {
      WanderNoise refit = PlayProfile.refit(profile.behind(lost), wanderNoise);
      return new PulseLikelihood(profile, refit).at(lost);
    }
  }
}
