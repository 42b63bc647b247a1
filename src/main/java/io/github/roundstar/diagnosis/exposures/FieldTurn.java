package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.function.ToDoubleBiFunction;

/**
 * How the field turns about the guide star while a run goes on, by the error of the polar axis.
 *
 * @param known whether the axis is known well enough to say of one exposure how far it turned
 * @param degreesSinceStart rotation of the field since the run's start at a time of the run, about
 *     the likeliest axis [deg, s]
 * @param drawn the same about axes as they may be
 */
public record FieldTurn(
    boolean known,
    ToDoubleBiFunction<GuideRun, Double> degreesSinceStart,
    List<ToDoubleBiFunction<GuideRun, Double>> drawn) {
  /** Copies the list. */
  public FieldTurn {
    drawn = List.copyOf(drawn);
  }

  double radiansBetween(GuideRun run, double from, double to) {
    return radiansBetween(degreesSinceStart, run, from, to);
  }

  /** The turn about each axis of the draws. */
  double[] drawnRadiansBetween(GuideRun run, double from, double to) {
    return drawn.stream().mapToDouble(turn -> radiansBetween(turn, run, from, to)).toArray();
  }

  private static double radiansBetween(
      ToDoubleBiFunction<GuideRun, Double> turn, GuideRun run, double from, double to) {
    return Math.toRadians(turn.applyAsDouble(run, to) - turn.applyAsDouble(run, from));
  }
}
