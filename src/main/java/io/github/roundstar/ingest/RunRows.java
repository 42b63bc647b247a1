package io.github.roundstar.ingest;

import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Note;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Finds and drops rows of a run that another file has as well. */
final class RunRows {
  /** Logs write milliseconds; half of one tells equal instants from rounding. */
  private static final double SAME_INSTANT_SECONDS = 0.5e-3;

  private RunRows() {}

  /**
   * Frames of {@code run} that {@code earlier} has at the same instant with the same offsets and
   * pulses. The pulse of a run's last frame does not count: where the log holds a pulse in the row
   * after its frame, the end of the file hides it.
   */
  static BitSet alsoIn(GuideRun earlier, GuideRun run) {
    Frames ours = run.frames();
    Frames theirs = earlier.frames();
    Duration between = Duration.between(earlier.start().orElseThrow(), run.start().orElseThrow());
    double shift = between.getSeconds() + between.getNano() * 1e-9;
    BitSet same = new BitSet();
    int j = 0;
    for (int i = 0; i < ours.size(); i++) {
      double time = ours.timeSeconds(i) + shift;
      while (j < theirs.size() && theirs.timeSeconds(j) < time - SAME_INSTANT_SECONDS) {
        j++;
      }
      if (j < theirs.size()
          && theirs.timeSeconds(j) <= time + SAME_INSTANT_SECONDS
          && sameValues(ours, i, theirs, j)) {
        same.set(i);
      }
    }
    return same;
  }

  private static boolean sameValues(Frames ours, int i, Frames theirs, int j) {
    boolean sameOffsets =
        same(ours.raArcsec(i), theirs.raArcsec(j)) && same(ours.decArcsec(i), theirs.decArcsec(j));
    boolean last = i == ours.size() - 1 || j == theirs.size() - 1;
    return sameOffsets
        && (last
            || same(ours.raPulseMillis(i), theirs.raPulseMillis(j))
                && same(ours.decPulseMillis(i), theirs.decPulseMillis(j)));
  }

  private static boolean same(double one, double other) {
    return one == other || Double.isNaN(one) && Double.isNaN(other);
  }

  /**
   * The run less some of its frames, which count as duplicates; its start and hour angle move to
   * its new first frame. Empty if no frame is left.
   */
  static Optional<GuideRun> without(GuideRun run, BitSet dropped) {
    Frames frames = run.frames();
    int first = dropped.nextClearBit(0);
    if (first >= frames.size()) {
      return Optional.empty();
    }
    Instant start = run.instantAt(frames.timeSeconds(first)).orElseThrow();
    double zero = Math.round(frames.timeSeconds(first) * 1e9) / 1e9;
    FramesBuilder kept = new FramesBuilder();
    for (int i = first; i < frames.size(); i++) {
      if (!dropped.get(i)) {
        copy(frames, i, zero, kept);
      }
    }
    Frames rest = kept.build();
    int duplicate = run.counts().duplicate() + dropped.cardinality();
    return Optional.of(
        new GuideRun(
            run.id(),
            Optional.of(start),
            later(run.pointing(), zero),
            run.camera(),
            run.loop(),
            rest,
            RowCounts.of(rest, duplicate, run.counts().unusable()),
            notes(run, dropped, zero),
            run.sense()));
  }

  private static void copy(Frames frames, int i, double zero, FramesBuilder kept) {
    kept.add(frames.timeSeconds(i) - zero, frames.raArcsec(i), frames.decArcsec(i));
    kept.state(frames.state(i));
    if (frames.hasPulses()) {
      kept.pulses(frames.raPulseMillis(i), frames.decPulseMillis(i));
    }
    if (!Double.isNaN(frames.snr(i)) || !Double.isNaN(frames.fluxAdu(i))) {
      kept.star(frames.snr(i), frames.fluxAdu(i));
    }
    if (frames.ditherStart(i)) {
      kept.dither(frames.ditherRaArcsec(i), frames.ditherDecArcsec(i));
    }
  }

  private static Pointing later(Pointing pointing, double seconds) {
    OptionalDouble hours = pointing.hourAngleHours();
    return hours.isEmpty() ? pointing : pointing.at(HourAngle.later(hours.getAsDouble(), seconds));
  }

  private static List<Note> notes(GuideRun run, BitSet dropped, double zero) {
    List<Note> kept = new ArrayList<>();
    int i = 0;
    for (Note note : run.notes()) {
      while (run.frames().timeSeconds(i) < note.timeSeconds()) {
        i++;
      }
      if (!dropped.get(i)) {
        kept.add(new Note(note.timeSeconds() - zero, note.text()));
      }
    }
    return kept;
  }

  /** The same run with further rows that are no frames. */
  static GuideRun withMore(GuideRun run, int duplicate, int unusable) {
    RowCounts more = new RowCounts(0, 0, 0, 0, 0, duplicate, 0, unusable);
    return new GuideRun(
        run.id(),
        run.start(),
        run.pointing(),
        run.camera(),
        run.loop(),
        run.frames(),
        run.counts().plus(more),
        run.notes(),
        run.sense());
  }
}
