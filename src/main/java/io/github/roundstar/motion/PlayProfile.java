package io.github.roundstar.motion;

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
 */
record PlayProfile(Reconstruction reconstruction, AxisRun plain, Optional<JoltFree> quiet) {
  /** Widths tried first [arcsec]; a play wider than the last is a loose gear, not a backlash. */
  private static final double[] WIDTHS = {
    0, 0.25, 0.5, 0.75, 1, 1.4, 1.8, 2.3, 3, 4, 5, 6.5, 8, 10, 12.5, 16, 20
  };

  /** Where the gears may rest between the flanks at first; it matters until the first reversal. */
  private static final double[] SLACKS = {0.5, 0, 0.125, 0.25, 0.375, 0.625, 0.75, 0.875, 1};

  /** Widths are told to this, a tenth of an interval at best [arcsec]. */
  private static final double WIDTH_ACCURACY = 0.002;

  /** The same where a fit of all that the play hangs on goes on from there. */
  private static final double ROUGHLY = 0.1;

  /**
   * So many widths on end whose log likelihood is so far below the best end the first round: wider
   * ones only fit worse. A run of a few hours falls so far within an arcsecond of its play.
   */
  private static final int HOPELESS_WIDTHS = 3;

  private static final double HOPELESS = 100;

  static final double WIDEST = WIDTHS[WIDTHS.length - 1];

  /** Of a run of which nothing is known yet. */
  PlayProfile(Reconstruction reconstruction, AxisRun plain) {
    this(reconstruction, plain, Optional.empty());
  }

  /** One width and flank with its likelihood. */
  record Trial(double width, double slack, WanderNoise wanderNoise, double logLikelihood) {
    private static final Comparator<Trial> BY_LIKELIHOOD =
        Comparator.comparingDouble(Trial::logLikelihood);

    LostMotion play() {
      return LostMotion.play(width, slack, 0);
    }
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

  private Backlash near(Trial start) {
    Trial rough = refined(start, ROUGHLY);
    WanderNoise known = refit(rough.width(), rough.slack(), rough.wanderNoise());
    PulseLikelihood likelihood = new PulseLikelihood(this, known);
    Trial best = rough;
    for (double slack : SLACKS) {
      best = better(best, trial(rough.width(), slack, known, likelihood));
    }
    Trial alike = best;
    return Optional.of(alike)
        .filter(play -> bothWays() && new WidthInterval(this, play).sure())
        .flatMap(play -> PlayFit.of(this, play.play(), known))
        .filter(play -> play.declaredArcsec().lo95() > 0)
        .orElseGet(() -> alone(refined(alike, WIDTH_ACCURACY)));
  }

  /** Only then do the gears cross their play. */
  private boolean bothWays() {
    return ResponseModel.of(plain, List.of()).bothWays();
  }

  /** A play that may not be there. */
  private Backlash alone(Trial best) {
    AxisRun run = behind(best.play());
    WanderNoise.Remembering remembering =
        run.motion().remembering(best.wanderNoise(), ResponseModel.of(run, List.of()).columns());
    Trial lasting =
        remembering.clear()
            ? refined(trial(best.width(), best.slack(), remembering.model()), WIDTH_ACCURACY)
            : best;
    return new WidthInterval(this, lasting).measured(remembering.longer());
  }

  AxisRun behind(LostMotion lost) {
    AxisRun whole = plain.with(reconstruction.sky(lost));
    return quiet.map(whole::without).orElse(whole);
  }

  WanderNoise refit(double width, double slack, WanderNoise near) {
    return refit(behind(LostMotion.play(width, slack, 0)), near);
  }

  static WanderNoise refit(AxisRun run, WanderNoise near) {
    return run.motion().wanderNoise(ResponseModel.of(run, List.of()).columns(), near).orElse(near);
  }

  /** Golden section between the neighbours of the best width. */
  private Trial refined(Trial best, double accuracy) {
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
    while (high - low > accuracy) {
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

  private static Trial better(Trial one, Trial other) {
    return Stream.of(one, other).max(Trial.BY_LIKELIHOOD).orElseThrow();
  }

  /** One width and flank, wander and noise known. */
  Trial trial(double width, double slack, WanderNoise wanderNoise) {
    return trial(width, slack, wanderNoise, new PulseLikelihood(this, wanderNoise));
  }

  private static Trial trial(
      double width, double slack, WanderNoise wanderNoise, PulseLikelihood likelihood) {
    double logLikelihood = likelihood.at(LostMotion.play(width, slack, 0));
    return new Trial(width, slack, wanderNoise, logLikelihood);
  }

  private static WhiteRegression fit(AxisRun run, Whitening whitening) {
    double[][] columns = ResponseModel.of(run, List.of()).columns();
    return WhiteRegression.of(run.motion().white(whitening), whitening.apply(columns));
  }

  /** White steps that nothing explains. */
  static double[] residuals(AxisRun run, WanderNoise wanderNoise) {
    return fit(run, run.motion().whitening(wanderNoise)).residuals();
  }
}
