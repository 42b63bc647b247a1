package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.LoopTheory;
import io.github.roundstar.results.NightResult;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * What another gain of one axis would save.
 *
 * @param axis which axis
 * @param gain the gain in use
 * @param better the gain to use
 * @param wholeArcsec2 mean square of the axis with the gain in use [arcsec^2]
 * @param savedArcsec2 what the better gain takes away of it [arcsec^2]
 * @param how where that is from
 */
record GainChange(
    Axis axis,
    Estimate gain,
    double better,
    double wholeArcsec2,
    Estimate savedArcsec2,
    String how) {

  /** Gain to go down: the interval of the gain in use lies above the better one. */
  boolean weaker() {
    return gain.lo95() > better;
  }

  /** Gain to go up. */
  boolean stronger() {
    return gain.hi95() < better;
  }

  /** From the replay where there is one, else from the closed forms of a first-order loop. */
  static Answer<GainChange> of(Facts facts, Axis axis) {
    Optional<Estimate> gain = facts.loop(axis).gain();
    if (gain.isEmpty()) {
      return Answer.none(facts.because("/runs/*/loop"));
    }
    Optional<ReplayReading> replay = ReplayReading.of(facts.result(), axis);
    if (replay.isPresent()) {
      return Answer.of(replayed(axis, gain.get(), replay.get()));
    }
    if (facts.budget().isEmpty()) {
      return Answer.none(facts.because("/replay"));
    }
    return Answer.of(closedForm(facts.result(), facts.budget().get(), axis, gain.get()));
  }

  private static GainChange replayed(Axis axis, Estimate gain, ReplayReading replay) {
    double now = replay.current().predictedMotionRmsArcsec();
    Estimate less = replay.best().lessMotionArcsec();
    double error = Thresholds.REPLAY_RATIO;
    return new GainChange(
        axis,
        gain,
        replay.best().gain(),
        square(now),
        new Estimate(
            square(now) - square(now - less.value()),
            square(now) - square((now - less.lo95()) * (1 + error)),
            square(now) - square(Math.max(0, now - less.hi95()) * (1 - error))),
        "replay of the night");
  }

  /**
   * First-order loop: noise R passes into the offsets as 2R/(2-g); a random walk leaves q/(g(2-g))
   * of its steps; what is slow against the loop is left as 1/g of its step per frame, so its mean
   * square goes with 1/g^2 ({@link LoopTheory}).
   */
  private static GainChange closedForm(
      NightResult night, TrailingBudget budget, Axis axis, Estimate gain) {
    double better = Thresholds.USUAL_GAIN;
    double slow = budget.part(axis, GainChange::isSlow).trailingArcsec2();
    double wander = budget.part(axis, "wander"::equals).trailingArcsec2();
    double noise = budget.part(axis, "noise"::equals).trailingArcsec2();
    DoubleUnaryOperator saved = g -> savedArcsec2(slow, wander, noise, g, better);
    double low = saved.applyAsDouble(gain.lo95());
    double value = saved.applyAsDouble(gain.value());
    double high = saved.applyAsDouble(gain.hi95());
    double allowed =
        Thresholds.BUDGET_RELATIVE * (Math.abs(slow) + Math.abs(wander) + Math.abs(noise))
            + Thresholds.BUDGET_ARCSEC2;
    return new GainChange(
        axis,
        gain,
        better,
        budget.trailingArcsec2(axis),
        new Estimate(
            value,
            Math.min(value, Math.min(low, high)) - allowed,
            Math.max(value, Math.max(low, high)) + allowed),
        "closed form of a loop");
  }

  /**
   * What another gain saves of slow motion, wander and noise [arcsec&sup2;]; a gain of 2 and more
   * is unstable.
   */
  static double savedArcsec2(double slow, double wander, double noise, double gain, double better) {
    double bounded = Math.max(0.02, Math.min(1.95, gain));
    double kept =
        LoopTheory.motionVariance(better, 1, 0) / LoopTheory.motionVariance(bounded, 1, 0);
    return slow * (1 - square(bounded / better))
        + wander * (1 - kept)
        + noise * (1 - (2 - bounded) / (2 - better));
  }

  /** Causes that are slow against the loop, so that a stronger correction leaves less of them. */
  private static boolean isSlow(String cause) {
    return cause.startsWith("periodic:") || cause.equals("drift-lag");
  }

  private static double square(double x) {
    return x * x;
  }
}
