package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.PointedRun;
import io.github.roundstar.motion.PolarAlignment;
import java.util.List;
import java.util.Optional;

/** Looks for the polar axis in all runs of a night. */
final class AxisSearch {
  private AxisSearch() {}

  /** The fit, whatever it is worth, with the observatory; or why there is none. */
  static Answer<Found> of(List<RunStudy> studies, Equipment equipment) {
    return Observatory.of(studies.stream().map(RunStudy::run).toList(), equipment)
        .then(
            place ->
                PointedRuns.of(studies, equipment, Optional.of(place.site()))
                    .then(runs -> at(place, runs)));
  }

  /** The fit at one place. */
  static Answer<Found> at(Observatory place, List<PointedRun> runs) {
    return PolarAlignment.of(place.site(), place.air(), place.liftDeviation(), runs)
        .map(fit -> Answer.of(new Found(place, fit)))
        .orElseGet(() -> Answer.none("the runs are too short to tell a drift"));
  }

  /**
   * What was found.
   *
   * @param place site and air
   * @param fit axis and tracking rate
   */
  record Found(Observatory place, PolarAlignment fit) {}
}
