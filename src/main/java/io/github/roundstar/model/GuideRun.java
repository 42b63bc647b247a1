package io.github.roundstar.model;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Unbroken guiding on one star.
 *
 * @param id number of the run within its night or, before nights are formed, its file; from 1
 * @param start the instant of time zero, where the log has absolute time
 * @param pointing where the telescope looked
 * @param camera the guide camera
 * @param loop guide settings
 * @param frames the frames in order of time
 * @param counts where every row of the run went; its frame states agree with {@code frames}
 * @param notes remarks in order of time
 * @param sense whether east and north are known from their opposites
 */
public record GuideRun(
    int id,
    Optional<Instant> start,
    Pointing pointing,
    GuideCamera camera,
    LoopSettings loop,
    Frames frames,
    RowCounts counts,
    List<Note> notes,
    SkySense sense) {
  /** Checks and copies. */
  public GuideRun {
    Objects.requireNonNull(start, "start");
    Objects.requireNonNull(frames, "frames");
    notes = List.copyOf(notes);
  }

  /** A run whose directions are known. */
  public GuideRun(
      int id,
      Optional<Instant> start,
      Pointing pointing,
      GuideCamera camera,
      LoopSettings loop,
      Frames frames,
      RowCounts counts,
      List<Note> notes) {
    this(id, start, pointing, camera, loop, frames, counts, notes, SkySense.KNOWN);
  }

  /** The same run under another number. */
  public GuideRun withId(int newId) {
    return new GuideRun(newId, start, pointing, camera, loop, frames, counts, notes, sense);
  }

  /** The instant of a time in this run, where the log has absolute time. */
  public Optional<Instant> instantAt(double timeSeconds) {
    return start.map(instant -> instant.plusNanos(Math.round(timeSeconds * 1e9)));
  }

  /** What kind of log this run is. */
  public GuidingMode mode() {
    if (!frames.hasPulses()) {
      return GuidingMode.NO_PULSES;
    }
    for (int i = 0; i < frames.size(); i++) {
      if (frames.raPulseMillis(i) != 0 || frames.decPulseMillis(i) != 0) {
        return GuidingMode.GUIDED;
      }
    }
    return GuidingMode.UNGUIDED;
  }
}
