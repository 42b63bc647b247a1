package io.github.roundstar.diagnosis;

import io.github.roundstar.model.SkySense;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.Gears;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.motion.TurnCurve;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.Periodic;
import java.util.List;

/** Periodic error as the result shows it. */
final class PeriodicFigures {
  private static final String PERIODIC = "/periodic";

  private PeriodicFigures() {}

  /** The record, or null with the reason noted. */
  static Periodic of(
      Answer<PeriodicError> answer, Gears gears, SkySense sense, Reasons.Scope scope) {
    PeriodicError found = scope.orNull(PERIODIC, answer);
    if (found == null) {
      return null;
    }
    if (!sense.ra() && !found.tones().isEmpty()) {
      scope.note(PERIODIC + "/components/*/phaseRad", Directions.because(Axis.RA));
    }
    Answer<TurnCurve> curve = found.curve();
    return new Periodic(
        scope.orNull(PERIODIC + "/peakToPeakArcsecAxis", found.peakToPeakArcsecAxis()),
        scope.orNull(
            PERIODIC + "/maxRateArcsecPerSecondAxis",
            curve.map(TurnCurve::steepestArcsecPerSecond)),
        scope.orNull(
            PERIODIC + "/cycles",
            found.cycles(),
            "no period stands out, and the worm's is not known: add worm_teeth or worm_period_s"
                + " under [mount] in the equipment file"),
        scope.orNull(PERIODIC + "/repeatability", found.repeatability()),
        components(found, sense),
        scope.orNull(PERIODIC + "/detectable", Visibility.of(found, gears)));
  }

  static List<Component> components(PeriodicError found, SkySense sense) {
    return found.tones().stream()
        .map(
            tone ->
                new Component(
                    tone.periodSeconds(),
                    tone.amplitudeArcsecAxis(),
                    sense.ra() ? (Double) tone.phaseRad() : null,
                    tone.falseAlarm(),
                    tone.source(),
                    tone.mayBeAlias()))
        .toList();
  }
}
