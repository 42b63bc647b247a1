package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.FieldTurn;
import io.github.roundstar.motion.PointedRun;
import io.github.roundstar.sky.FieldRotation;
import io.github.roundstar.sky.PolarAxis;
import io.github.roundstar.sky.StarPlace;
import java.util.HashMap;
import java.util.Map;

/** How a known polar axis turns the field during the exposures of each run. */
final class ExposureTurn {
  private ExposureTurn() {}

  /** The turn; a run without a place of its star does not turn. */
  static FieldTurn of(AxisSearch.Found found) {
    PolarAxis axis =
        new PolarAxis(
            found.place().site(),
            found.fit().azimuthArcmin().value(),
            found.fit().altitudeArcmin().value());
    Map<Integer, StarPlace> atZero = new HashMap<>();
    for (PointedRun run : found.fit().runs()) {
      atZero.put(run.dec().runId(), run.atZero());
    }
    return new FieldTurn(
        (run, seconds) ->
            atZero.containsKey(run.id())
                ? FieldRotation.imageTurnDegrees(axis, atZero.get(run.id()), seconds)
                : 0);
  }
}
