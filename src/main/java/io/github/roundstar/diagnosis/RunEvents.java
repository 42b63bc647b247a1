package io.github.roundstar.diagnosis;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.results.Event;
import java.util.ArrayList;
import java.util.List;

/** What the log says happened in a run: dithers and stretches without the star. */
final class RunEvents {
  private RunEvents() {}

  static List<Event> of(Frames frames, Reasons.Scope scope) {
    List<Event> events = new ArrayList<>();
    for (int i = 0; i < frames.size(); i++) {
      if (frames.ditherStart(i)) {
        double size = Math.hypot(frames.ditherRaArcsec(i), frames.ditherDecArcsec(i));
        events.add(new Event(frames.timeSeconds(i), "dither", Double.isNaN(size) ? null : size));
      }
      boolean lost = frames.state(i) == FrameState.LOST;
      if (lost && (i == 0 || frames.state(i - 1) != FrameState.LOST)) {
        events.add(new Event(frames.timeSeconds(i), "lost", null));
      }
    }
    if (events.stream().anyMatch(event -> event.sizeArcsec() == null)) {
      scope.note(
          "/events/*/sizeArcsec",
          "a lost star has no size, nor has a dither whose shift the log leaves out: log dither_ra"
              + " and dither_dec");
    }
    return events;
  }
}
