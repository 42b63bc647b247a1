package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.PlayModel.Linear;
import io.github.roundstar.motion.PlayModel.Place;
import io.github.roundstar.motion.PlayModel.Steps;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.WanderNoise;
import java.util.List;
import java.util.Optional;

/**
 * A play that surely is there, fitted together with all that it hangs on: the strength of pulses,
 * how unlike both directions are, and where the gears rest at first.
 *
 * <p>The motion is continuous in all of them, with kinks where another pulse begins to move the
 * tube, so that Gauss-Newton steps find the top, the derivatives taken over a standard error. The
 * interval of the play is that of its likelihood ratio, everything else fitted anew.
 */
final class PlayFit {
  /** Steps of where the gears may rest at first, from flank to flank. */
  private static final int STARTS = 8;

  private static final int MOST_STEPS = 10;

  /** A step that leads down is halved so often. */
  private static final int HALVINGS = 2;

  /** A step that raises the log likelihood by less is the last. */
  private static final double LEAST_GAIN = 0.01;

  private static final int REACH_ROUNDS = 4;

  /** Share of its half width that an interval's end is told to. */
  private static final double REACH_ACCURACY = 0.03;

  /** Most that one round may move an end by. */
  private static final double MOST_GROWTH = 3;

  private final PlayProfile profile;
  private final PlayModel model;

  private PlayFit(PlayProfile profile) {
    this.profile = profile;
    this.model = new PlayModel(profile);
  }

  /**
   * Fits.
   *
   * @param near a play near the likeliest one
   * @param wanderNoise wander and white noise behind it
   * @return nothing where strength, unlikeness and play cannot be told apart
   */
  static Optional<Backlash> of(PlayProfile profile, LostMotion near, WanderNoise wanderNoise) {
    PlayFit fit = new PlayFit(profile);
    return fit.climbed(fit.model.at(near, wanderNoise), Steps.FIRST)
        .flatMap(top -> fit.climbed(fit.started(top), top.nextSteps()))
        .flatMap(fit::remembering);
  }

  /** Once more with the noise's memory, where it clearly has one. */
  private Optional<Backlash> remembering(Linear top) {
    WanderNoise.Remembering found = model.remembering(top);
    Optional<Linear> lasting =
        found.clear()
            ? climbed(model.at(top.place().play(), found.model()), top.nextSteps())
            : Optional.of(top);
    return lasting.map(last -> measured(last, found.longer()));
  }

  private Optional<Linear> climbed(Place from, Steps first) {
    Optional<Linear> here = model.linear(from, first);
    for (int i = 0; i < MOST_STEPS && here.isPresent(); i++) {
      Linear linear = here.get();
      double height = linear.place().logLikelihood();
      Place next = stepped(linear, 1);
      for (int h = 1; h <= HALVINGS && next.logLikelihood() < height; h++) {
        next = stepped(linear, Math.pow(0.5, h));
      }
      if (next.logLikelihood() < height + LEAST_GAIN) {
        return here;
      }
      here = model.linear(next, linear.nextSteps());
    }
    return here;
  }

  /** Part of the way to the top of the linear model. */
  private Place stepped(Linear linear, double share) {
    LostMotion play = linear.place().play();
    double width =
        linear.fit().coefficient(linear.play()) / linear.fit().coefficient(linear.strength());
    return model.at(
        LostMotion.play(
            Math.max(0, play.arcsec() + share * (width - play.arcsec())),
            Math.max(0, Math.min(1, play.start() + share * linear.start())),
            play.unlikeness() + share * linear.unlikeness()),
        linear.place().wanderNoise());
  }

  /** Beside the right wander and noise, the gears resting where that is likeliest. */
  private Place started(Linear top) {
    LostMotion play = top.place().play();
    Place best = model.at(play, model.refit(top));
    for (int i = 0; i <= STARTS; i++) {
      LostMotion other = LostMotion.play(play.arcsec(), i / (double) STARTS, play.unlikeness());
      Place place = model.at(other, best.wanderNoise());
      best = place.logLikelihood() > best.logLikelihood() ? place : best;
    }
    return best;
  }

  private Backlash measured(Linear top, WanderNoise longer) {
    double[] residuals = top.fit().residuals();
    double independent = top.fit().standardError(top.play());
    double lasting =
        NeweyWest.covarianceCorrected(top.design(), residuals, NeweyWest.plugInLag(residuals))
            .standardError(top.play());
    double colour = Math.max(1, lasting / independent);
    double first = Estimate.SIGMAS_95 * colour * independent;
    double fall = WidthInterval.HALF_CHI_SQUARE_95 * colour * colour;
    double memory =
        Estimate.SIGMAS_95 * (model.arcsec(top, longer) - top.fit().coefficient(top.play()));
    double strength = top.place().strength();
    double below = Math.hypot(reach(top, -1, first, fall), memory) / strength;
    double above = Math.hypot(reach(top, 1, first, fall), memory) / strength;
    LostMotion play = top.place().play();
    TiedPulses pulses = new TiedPulses(profile.reconstruction());
    double[] byWidth = pulses.byWidth(play, top.steps().width());
    return new Backlash(
        new Estimate(play.arcsec(), Math.max(0, play.arcsec() - below), play.arcsec() + above),
        play.start(),
        profile.plain().with(pulses.motion(play, top.steps().unlikeness())),
        top.starts()
            ? List.of(byWidth, pulses.byStart(play, top.steps().start()))
            : List.of(byWidth),
        top.place().wanderNoise(),
        play.unlikeness());
  }

  /**
   * How far to one side of the likeliest play [arcsec] the likelihood has fallen by so much; all
   * the way to zero where it has not fallen so far there.
   */
  private double reach(Linear top, int side, double first, double fall) {
    double play = top.place().arcsec();
    double highest = model.logLikelihood(top, play);
    double reach = first;
    for (int i = 0; i < REACH_ROUNDS; i++) {
      double end = Math.max(0, play + side * reach);
      double fallen = highest - model.logLikelihood(top, end);
      if (end == 0 && fallen < fall) {
        return play;
      }
      double factor = fallen <= 0 ? MOST_GROWTH : Math.sqrt(fall / fallen);
      reach *= Math.max(1 / MOST_GROWTH, Math.min(MOST_GROWTH, factor));
      if (Math.abs(factor - 1) < REACH_ACCURACY) {
        break;
      }
    }
    return reach;
  }
}
