package io.github.roundstar.diagnosis;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.motion.Disturbance;
import io.github.roundstar.results.Event;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What happened in a run: what the log says, and what the star shows. */
final class RunEvents {
  private RunEvents() {}

  /**
   * All events in order of time.
   *
   * @param before the run before this one
   */
  static List<Event> of(RunStudy study, Optional<RunStudy> before, Reasons.Scope scope) {
    List<Event> events = new ArrayList<>(logged(study.run().frames()));
    before
        .filter(b -> Flips.between(b.run(), study.run()))
        .ifPresent(b -> events.add(moment(study.run().frames().timeSeconds(0), "flip", null)));
    study.disturbances().forEach(disturbance -> events.add(event(disturbance)));
    events.sort(Comparator.comparingDouble(Event::time));
    if (events.stream().anyMatch(event -> event.sizeArcsec() == null)) {
      scope.note(
          "/events/*/sizeArcsec",
          "a lost star, a cloud, a flip and a stuck star have no size, nor has a dither whose shift"
              + " the log leaves out: log dither_ra and dither_dec");
    }
    if (events.stream().anyMatch(event -> event.lightLost() == null)) {
      scope.note("/events/*/lightLost", "only a cloud takes light");
    }
    return events;
  }

  private static List<Event> logged(Frames frames) {
    List<Event> events = new ArrayList<>();
    for (int i = 0; i < frames.size(); i++) {
      if (frames.ditherStart(i)) {
        double size = Math.hypot(frames.ditherRaArcsec(i), frames.ditherDecArcsec(i));
        events.add(moment(frames.timeSeconds(i), "dither", Double.isNaN(size) ? null : size));
      }
      boolean lost = frames.state(i) == FrameState.LOST;
      if (lost && (i == 0 || frames.state(i - 1) != FrameState.LOST)) {
        int last = i;
        while (last + 1 < frames.size() && frames.state(last + 1) == FrameState.LOST) {
          last++;
        }
        events.add(new Event(frames.timeSeconds(i), "lost", null, frames.timeSeconds(last), null));
      }
    }
    return events;
  }

  private static Event moment(double time, String kind, Double size) {
    return new Event(time, kind, size, time, null);
  }

  private static Event event(Disturbance disturbance) {
    return new Event(
        disturbance.startSeconds(),
        disturbance.kind().word(),
        boxed(disturbance.sizeArcsec()),
        disturbance.endSeconds(),
        boxed(disturbance.lightLost()));
  }

  private static Double boxed(OptionalDouble value) {
    return value.isPresent() ? (Double) value.getAsDouble() : null;
  }
}
