package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.WhiteRegression;
import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Lost motion at a reversal: the pulses go through a play of unknown width, whose likelihood is
 * profiled with everything else in the model - drift, bend, strength of pulses, wander, noise -
 * fitted anew at each width. The flank that the gears rest on at first is unknown and tried too.
 *
 * @param widthArcsec width of the play at the axis with its 95 % interval; the interval holds zero
 *     when there may be none
 * @param run motion behind the play of that width
 */
public record Backlash(Estimate widthArcsec, AxisRun run) {
  /** Widths tried first [arcsec]; a play wider than the last is a loose gear, not a backlash. */
  private static final double[] WIDTHS = {
    0, 0.25, 0.5, 0.75, 1, 1.4, 1.8, 2.3, 3, 4, 5, 6.5, 8, 10, 12.5, 16, 20
  };

  private static final double[] SLACKS = {0, 0.5, 1};
  private static final int REFINEMENTS = 24;

  /** Half of the 95 % point of chi-square with one degree of freedom. */
  private static final double PROFILE_95 = 1.9207;

  /**
   * Profiles the width.
   *
   * @param reconstruction what the motion is made of
   * @param plain the run as if there were no play
   * @return nothing when there are no pulses, too few frames, or the star never moved
   */
  static Optional<Backlash> of(Reconstruction reconstruction, AxisRun plain) {
    ResponseModel model = ResponseModel.of(plain, List.of());
    MotionSeries motion = plain.motion();
    if (!reconstruction.pushed()
        || motion.size() - motion.pieces() < RunBackground.FEWEST_STEPS + model.columns().length) {
      return Optional.empty();
    }
    return WanderNoise.fit(motion.seconds(), motion.startsPiece(), motion.arcsec(), model.columns())
        .map(first -> new Profile(reconstruction, plain).search(first));
  }

  /** One width and flank with its likelihood. */
  private record Trial(double width, double slack, AxisRun run, double logLikelihood) {}

  private static final class Profile {
    private final Reconstruction reconstruction;
    private final AxisRun plain;
    private Whitening whitening;

    Profile(Reconstruction reconstruction, AxisRun plain) {
      this.reconstruction = reconstruction;
      this.plain = plain;
    }

    Backlash search(WanderNoise first) {
      whitening = first.whitening(plain.motion().seconds(), plain.motion().startsPiece());
      Trial best = coarse();
      WanderNoise again = refit(best.run(), first);
      whitening = again.whitening(plain.motion().seconds(), plain.motion().startsPiece());
      best = refined(coarse());
      double enough = best.logLikelihood() - PROFILE_95;
      Estimate width =
          new Estimate(
              best.width(),
              best.width() == 0 ? 0 : edge(best, 0, enough),
              edge(best, WIDTHS[WIDTHS.length - 1], enough));
      return new Backlash(width, best.run());
    }

    private WanderNoise refit(AxisRun run, WanderNoise known) {
      MotionSeries motion = run.motion();
      double[][] columns = ResponseModel.of(run, List.of()).columns();
      return known
          .refit(motion.seconds(), motion.startsPiece(), motion.arcsec(), columns)
          .orElse(known);
    }

    private Trial coarse() {
      List<Trial> trials = new ArrayList<>();
      for (double width : WIDTHS) {
        for (double slack : SLACKS) {
          trials.add(trial(width, slack));
        }
      }
      return trials.stream()
          .max((a, b) -> Double.compare(a.logLikelihood(), b.logLikelihood()))
          .orElseThrow();
    }

    /** Golden section between the neighbours of the best width. */
    private Trial refined(Trial best) {
      double low = 0;
      double high = WIDTHS[WIDTHS.length - 1];
      for (double width : WIDTHS) {
        low = width < best.width() ? width : low;
        high = width > best.width() && width < high ? width : high;
      }
      Trial found = best;
      double ratio = (Math.sqrt(5) - 1) / 2;
      for (int i = 0; i < REFINEMENTS; i++) {
        Trial left = trial(high - ratio * (high - low), best.slack());
        Trial right = trial(low + ratio * (high - low), best.slack());
        if (left.logLikelihood() > right.logLikelihood()) {
          high = right.width();
        } else {
          low = left.width();
        }
        for (Trial trial : List.of(left, right)) {
          found = trial.logLikelihood() > found.logLikelihood() ? trial : found;
        }
      }
      return found;
    }

    /** Where the profile falls to {@code enough} on the way to {@code far}. */
    private double edge(Trial best, double far, double enough) {
      double inside = best.width();
      double outside = far;
      if (likelihoodOfAnyFlank(far) >= enough) {
        return far;
      }
      for (int i = 0; i < REFINEMENTS; i++) {
        double middle = (inside + outside) / 2;
        if (likelihoodOfAnyFlank(middle) >= enough) {
          inside = middle;
        } else {
          outside = middle;
        }
      }
      return inside;
    }

    private double likelihoodOfAnyFlank(double width) {
      double best = Double.NEGATIVE_INFINITY;
      for (double slack : SLACKS) {
        best = Math.max(best, trial(width, slack).logLikelihood());
      }
      return best;
    }

    private Trial trial(double width, double slack) {
      MotionSeries motion = reconstruction.skyBehindPlay(width, slack);
      AxisRun run = plain.with(motion);
      double[][] columns = ResponseModel.of(run, List.of()).columns();
      WanderNoise wn =
          WanderNoise.fit(motion.seconds(), motion.startsPiece(), motion.arcsec(), columns).get();
      Whitening whitening = wn.whitening(motion.seconds(), motion.startsPiece());
      WhiteRegression fit =
          WhiteRegression.of(whitening.apply(motion.arcsec()), whitening.apply(columns));
      double steps = fit.steps();
      return new Trial(
          width,
          slack,
          run,
          -0.5 * (steps * Math.log(fit.sumOfSquares() / steps) + whitening.logDeterminant()));
    }
  }
}
