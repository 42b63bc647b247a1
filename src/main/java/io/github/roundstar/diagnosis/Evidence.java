package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.results.AxisTrace;
import io.github.roundstar.results.NightEvidence;
import java.util.List;
import java.util.Optional;

/** Gathers what the charts of a night show. */
final class Evidence {
  private Evidence() {}

  static NightEvidence of(
      Night night,
      List<RunStudy> studies,
      Answer<PeriodicError> periodic,
      Equipment equipment,
      Optional<AxisTrace> axis) {
    NightClock clock = NightClock.of(night.runs());
    return new NightEvidence(
        equipment.mount().name(),
        equipment.imaging().arcsecPerPixel(),
        Timeline.of(studies, clock),
        ScatterCloud.of(studies),
        MotionTraces.ra(studies, clock),
        MotionTraces.dec(studies, clock),
        periodic.value().map(PeriodicTraces::spectrum),
        periodic.value().flatMap(PeriodicTraces::turn),
        axis,
        List.of(),
        Directions.of(studies),
        Optional.empty());
  }
}
