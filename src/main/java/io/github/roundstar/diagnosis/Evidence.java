package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.results.AxisTrace;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.LocalTime;
import io.github.roundstar.results.MotionTrace;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.RunTrace;
import io.github.roundstar.results.SpectrumTrace;
import io.github.roundstar.results.WormTrace;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Gathers what the charts of a night show. */
final class Evidence {
  private static final double SECONDS_PER_DEGREE = 240;

  private Evidence() {}

  static NightEvidence of(
      Night night,
      List<RunStudy> studies,
      Answer<PeriodicError> periodic,
      Equipment equipment,
      boolean siteShown,
      Supplier<Optional<AxisTrace>> axis,
      Faults faults) {
    NightClock clock = NightClock.of(night.runs());
    return new NightEvidence(
        equipment.mount().name(),
        equipment.imaging().arcsecPerPixel(),
        faults.within("timeline", () -> Timeline.of(studies, clock), List.<RunTrace>of()),
        faults.within("cloud of offsets", () -> ScatterCloud.of(studies), ScatterCloud.EMPTY),
        faults.within(
            "curve of motion in right ascension",
            () -> MotionTraces.ra(studies, clock),
            List.<MotionTrace>of()),
        faults.within(
            "curve of motion in declination",
            () -> MotionTraces.dec(studies, clock),
            List.<MotionTrace>of()),
        faults.within(
            "spectrum",
            () -> periodic.value().map(PeriodicTraces::spectrum),
            Optional.<SpectrumTrace>empty()),
        faults.within(
            "turn of the worm",
            () -> periodic.value().flatMap(PeriodicTraces::turn),
            Optional.<WormTrace>empty()),
        faults.within("drift against hour angle", axis, Optional.<AxisTrace>empty()),
        List.of(),
        Directions.of(studies),
        Optional.empty(),
        localTime(night, clock, equipment, siteShown));
  }

  /** The log's offset before the longitude; nothing where the site is to be kept back. */
  private static Optional<LocalTime> localTime(
      Night night, NightClock clock, Equipment equipment, boolean siteShown) {
    if (!siteShown || clock.start().isEmpty()) {
      return Optional.empty();
    }
    return night
        .utcOffset()
        .map(offset -> new LocalTime(offset.getTotalSeconds(), LocalTime.Source.LOG))
        .or(
            () ->
                night.runs().stream()
                    .flatMapToDouble(run -> equipment.longitudeDegrees(run.pointing()).stream())
                    .mapToObj(
                        east ->
                            new LocalTime(
                                (int) Math.round(east * SECONDS_PER_DEGREE),
                                LocalTime.Source.LONGITUDE))
                    .findFirst());
  }
}
