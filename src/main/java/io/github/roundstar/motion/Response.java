package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.Whitening;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * How strongly the mount answers pulses of either direction, times the declared strength, and how
 * much of each frame is noise.
 *
 * <p>Inside a closed loop least squares of motion on pulses is biased, since a pulse answers the
 * noise of the frame before it. Here the noise is part of the model: the motion wanders, drifts,
 * bends and turns with its gears, each frame measures it with noise, and pulses are a known input
 * of unknown strength. All linear parameters are concentrated out of the restricted likelihood, so
 * that only wander over noise is searched, and how long the noise lasts.
 *
 * @param oneWay pulses east or north; nothing without such pulses
 * @param otherWay pulses west or south
 * @param both mean of the two, or the one there is
 * @param arrived share of all that was pushed that the motion shows: the two directions weighted by
 *     how far each was pushed, so that a direction of a few stray pulses, whose strength nobody can
 *     tell, does not decide; nothing without pulses
 * @param noiseArcsec standard deviation of the measurement noise of a frame; nothing when it cannot
 *     be told from wander
 * @param quiet the motion without its jolts, which all of this is taken from, with the wander and
 *     noise found in it
 * @see "Ljung, System Identification, 2nd ed. (1999), section 13.4, for closed loops and prediction
 *     errors"
 */
public record Response(
    Optional<Estimate> oneWay,
    Optional<Estimate> otherWay,
    Optional<Estimate> both,
    Optional<Estimate> arrived,
    Optional<Estimate> noiseArcsec,
    JoltFree quiet) {
  /**
   * Half widths above this share of the response tell too little; the declared one is then better.
   */
  private static final double TOO_WIDE = 0.1;

  /** Whether the run's pulses tell their strength well enough to be used. */
  public boolean informative() {
    return both.isPresent() && !eitherWay(way -> !narrow(way)) && both.get().lo95() > 0;
  }

  /** Whether pulses were sent in both directions. */
  public boolean bothWays() {
    return oneWay.isPresent() && otherWay.isPresent();
  }

  /** Half width of the least known direction's interval, as a share of its strength. */
  public double uncertainShare() {
    return Stream.concat(oneWay.stream(), otherWay.stream())
        .mapToDouble(e -> (e.hi95() - e.value()) / Math.abs(e.value()))
        .max()
        .orElse(0);
  }

  /** Whether this holds for the strength of either direction that has pulses. */
  boolean eitherWay(Predicate<Estimate> wanted) {
    return Stream.concat(oneWay.stream(), otherWay.stream()).anyMatch(wanted);
  }

  /** Whether a strength is known well enough to be used. */
  static boolean narrow(Estimate strength) {
    return strength.hi95() - strength.value() <= TOO_WIDE * strength.value();
  }

  /**
   * The run with its pulses pushing as measured, where that is known well enough and off the
   * declared strength by more than the declared one is allowed to be; else as it is.
   */
  AxisRun applied(AxisRun run) {
    return informative() && eitherWay(Response::off)
        ? run.answering(
            oneWay.map(Estimate::value).orElse(1.0), otherWay.map(Estimate::value).orElse(1.0))
        : run;
  }

  /**
   * Whether a strength differs from the declared one by more than twice what that is allowed, even
   * at three standard errors: a noisy measurement must not take the place of a good declaration.
   */
  private static boolean off(Estimate strength) {
    double certain = Math.abs(strength.value() - 1) - 1.5 * (strength.hi95() - strength.value());
    return certain > 2 * ToneModel.EXCESS_SHARE;
  }

  /**
   * Fits one run.
   *
   * @param run motion with the corrections as declared taken out
   * @param families sinusoids of the motion
   * @return nothing when there are too few frames, or the star never moved
   */
  static Optional<Response> of(AxisRun run, List<Family> families) {
    return of(run, ResponseModel.of(run, families));
  }

  /** The same with a play in the model, whose width the strength of pulses depends on. */
  static Optional<Response> behind(Backlash play) {
    return of(play.run(), ResponseModel.of(play.run(), List.of(), play.beside()));
  }

  private static Optional<Response> of(AxisRun run, ResponseModel model) {
    MotionSeries motion = run.motion();
    if (motion.size() - motion.pieces() < RunBackground.FEWEST_STEPS + model.columns().length) {
      return Optional.empty();
    }
    return motion
        .wanderNoise(model.columns())
        .flatMap(start -> of(model, JoltSearch.of(motion, model.columns(), start)));
  }

  private static Optional<Response> of(ResponseModel model, JoltFree asWhite) {
    WanderNoise.Remembering remembering = asWhite.remembering();
    JoltFree quiet = asWhite.with(remembering.model());
    MotionSeries motion = quiet.motion();
    Whitening whitening = motion.whitening(quiet.wandering().wanderNoise());
    return LeastSquares.on(whitening.apply(quiet.columns()))
        .map(
            design -> {
              LinearFit fit = design.fit(motion.white(whitening));
              double[] residuals = fit.residuals();
              double[] coefficients = fit.coefficients();
              double[] moved = quiet.coefficients(remembering.longer());
              double[] likeliest = quiet.coefficients();
              for (int j = 0; j < moved.length; j++) {
                moved[j] -= likeliest[j];
                coefficients[j] += remembering.below() * moved[j];
              }
              Covariance covariance =
                  NeweyWest.covarianceCorrected(design, residuals, NeweyWest.plugInLag(residuals))
                      .plus(moved);
              Optional<Estimate> oneWay = strength(coefficients, covariance, model.excess(0));
              Optional<Estimate> otherWay = strength(coefficients, covariance, model.excess(1));
              Optional<Estimate> only = oneWay.or(() -> otherWay);
              Optional<Estimate> noise = quiet.noise(remembering);
              if (oneWay.isEmpty() || otherWay.isEmpty()) {
                return new Response(oneWay, otherWay, only, only, noise, quiet);
              }
              Estimate both = mean(coefficients, covariance, model, 0.5);
              Estimate arrived = mean(coefficients, covariance, model, shareOneWay(quiet, model));
              return new Response(
                  oneWay, otherWay, Optional.of(both), Optional.of(arrived), noise, quiet);
            });
  }

  private static Optional<Estimate> strength(
      double[] coefficients, Covariance covariance, int column) {
    return column < 0
        ? Optional.empty()
        : Optional.of(
            Estimate.symmetric(
                1 + coefficients[column], Estimate.SIGMAS_95 * covariance.standardError(column)));
  }

  /** Share of the pushing that went east or north. */
  private static double shareOneWay(JoltFree quiet, ResponseModel model) {
    double oneWay = pushed(quiet.columns()[model.excess(0)]);
    return oneWay / (oneWay + pushed(quiet.columns()[model.excess(1)]));
  }

  /** Distance that the pulses of one direction pushed by, of their running sum. */
  private static double pushed(double[] sum) {
    return Math.abs(sum[sum.length - 1] - sum[0]);
  }

  /** Mean of both directions, the first with this weight. */
  private static Estimate mean(
      double[] coefficients, Covariance covariance, ResponseModel model, double weight) {
    int one = model.excess(0);
    int other = model.excess(1);
    double rest = 1 - weight;
    double variance =
        weight * weight * covariance.at(one, one)
            + rest * rest * covariance.at(other, other)
            + 2 * weight * rest * covariance.at(one, other);
    return Estimate.symmetric(
        1 + weight * coefficients[one] + rest * coefficients[other],
        Estimate.SIGMAS_95 * Math.sqrt(Math.max(0, variance)));
  }
}
