package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.GuideRun;
import java.util.function.ToDoubleBiFunction;

/**
 * How the field turns about the guide star while a run goes on: the input that a known polar-axis
 * error gives. Absent, nothing turns in the prediction.
 *
 * @param degreesSinceStart rotation of the field since the run's start at a time of the run [deg,
 *     s]
 */
public record FieldTurn(ToDoubleBiFunction<GuideRun, Double> degreesSinceStart) {
  double radiansBetween(GuideRun run, double from, double to) {
    return Math.toRadians(
        degreesSinceStart.applyAsDouble(run, to) - degreesSinceStart.applyAsDouble(run, from));
  }
}
