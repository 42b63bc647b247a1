package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.AxisKnowledge;
import io.github.roundstar.motion.AxisMotion;
import io.github.roundstar.motion.GuideRate;
import io.github.roundstar.motion.posterior.Figure;
import io.github.roundstar.results.Learned;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** How much a night taught of each axis, as the result shows it. */
final class LearnedFigures {
  private LearnedFigures() {}

  static Learned of(List<RunStudy> studies, Equipment equipment, Reasons.Scope scope) {
    return new Learned(
        scope.orNull("/learned/ra", axis(studies, equipment, RunStudy::ra, false)),
        scope.orNull("/learned/dec", axis(studies, equipment, RunStudy::dec, true)));
  }

  private static Answer<Learned.Axis> axis(
      List<RunStudy> studies,
      Equipment equipment,
      Function<RunStudy, Answer<AxisMotion>> axis,
      boolean mayPlay) {
    String because = "there is no run";
    for (RunStudy study : studies) {
      Answer<AxisMotion> motion = axis.apply(study);
      if (motion.value().isPresent()) {
        double rate = GuideRate.declaredAxis(study.run(), equipment).value().orElse(0.0);
        return Answer.of(axis(motion.value().get().known(), rate, mayPlay));
      }
      because = motion.because();
    }
    return Answer.none(because);
  }

  private static Learned.Axis axis(AxisKnowledge known, double rate, boolean mayPlay) {
    Optional<Figure> lost = known.playArcsecAxis().or(known::stickingArcsecAxis);
    return new Learned.Axis(
        known.strength().learned(),
        known.noiseArcsec().learned(),
        known.familyCount() == 0 ? null : (Double) known.amplitudeArcsecAxis(0).learned(),
        mayPlay ? lost.map(Figure::learned).orElse(null) : null,
        mayPlay ? (Double) known.posterior().playProbability() : null,
        known.posterior().explanations().stream()
            .map(e -> new Learned.Explanation(e.probability(), rate * e.strength(), e.memory()))
            .toList());
  }
}
