package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.AxisKnowledge;
import io.github.roundstar.motion.AxisMotion;
import io.github.roundstar.motion.AxisNight;
import io.github.roundstar.motion.GuideRate;
import io.github.roundstar.motion.posterior.Figure;
import io.github.roundstar.results.Learned;
import io.github.roundstar.signal.Portmanteau;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** How much a night taught of each axis, as the result shows it. */
final class LearnedFigures {
  private static final String NO_PERIOD = "no period stands out and none of a worm is known";

  private static final String TRACKING =
      "right ascension tracks one way, so that its gears do not cross their play";

  /** Numbers of the noise model: wander over noise, and memory. */
  private static final int FITTED = 2;

  private LearnedFigures() {}

  static Learned of(List<RunStudy> studies, Equipment equipment, Reasons.Scope scope) {
    return new Learned(
        axis(studies, equipment, RunStudy::ra, "/learned/ra", scope),
        axis(studies, equipment, RunStudy::dec, "/learned/dec", scope));
  }

  private static Learned.Axis axis(
      List<RunStudy> studies,
      Equipment equipment,
      Function<RunStudy, Answer<AxisMotion>> axis,
      String figure,
      Reasons.Scope scope) {
    String because = "there is no run";
    for (RunStudy study : studies) {
      Answer<AxisMotion> motion = axis.apply(study);
      if (motion.value().isPresent()) {
        double rate = GuideRate.unitAxis(study.run(), equipment);
        return axis(motion.value().get().known(), rate, residual(studies, axis), figure, scope);
      }
      because = motion.because();
    }
    return scope.orNull(figure, Answer.none(because));
  }

  private static Learned.Axis axis(
      AxisKnowledge known,
      double rate,
      Answer<Learned.Residual> residual,
      String figure,
      Reasons.Scope scope) {
    Figure lost = known.playArcsecAxis().or(known::stickingArcsecAxis).orElseThrow();
    return new Learned.Axis(
        known.strength().learned(),
        known.noiseArcsec().learned(),
        scope.orNull(
            figure + "/periodic",
            known.familyCount() == 0
                ? Answer.none(known.axis() == Axis.RA ? NO_PERIOD : AxisNight.NOT_TURNING)
                : Answer.of(known.amplitudeArcsecAxis(0).learned())),
        scope.orNull(figure + "/backlash", playing(known, lost.learned())),
        scope.orNull(
            figure + "/backlashProbability", playing(known, known.posterior().playProbability())),
        scope.orNull(figure + "/residual", residual),
        known.posterior().explanations().stream()
            .map(e -> new Learned.Explanation(e.probability(), rate * e.strength(), e.memory()))
            .toList());
  }

  private static Answer<Learned.Residual> residual(
      List<RunStudy> studies, Function<RunStudy, Answer<AxisMotion>> axis) {
    List<double[]> white = new ArrayList<>();
    double cadence = 0;
    for (RunStudy study : studies) {
      Optional<AxisMotion> motion = axis.apply(study).value();
      if (motion.isPresent()) {
        motion.get().whiteResiduals().ifPresent(white::add);
        cadence = Math.max(cadence, motion.get().run().cadenceSeconds());
      }
    }
    double seconds = cadence;
    return Portmanteau.of(white, FITTED)
        .map(test -> new Learned.Residual(test.chance(), test.correlation(), seconds * test.lag()))
        .map(Answer::of)
        .orElseGet(() -> Answer.none("too few frames to tell whether the model of the axis fits"));
  }

  private static Answer<Double> playing(AxisKnowledge known, double value) {
    return known.axis() == Axis.RA
        ? Answer.none(TRACKING)
        : known.pushedBothWays() ? Answer.of(value) : Answer.none(PulseFigures.ONE_WAY);
  }
}
