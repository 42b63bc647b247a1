package io.github.roundstar.diagnosis;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.Note;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.sky.SiderealRate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Sets long stretches without a pulse apart from the guiding around them, as runs of their own:
 * there the mount was left to itself and its motion is the offset.
 */
final class MixedRuns {
  /** Guiding hardly goes so long without a single pulse in either axis [s]. */
  static final double LEFT_ALONE_SECONDS = 600;

  /** A star that is lost or idle gets no pulses either: most frames must be good ones. */
  private static final double MOSTLY_USED = 0.8;

  /** The last pulse may run into the frame after the next. */
  private static final int AFTER_PULSE = 2;

  private static final double HOURS_PER_SECOND = SiderealRate.ARCSEC_PER_SECOND / 54_000;

  private MixedRuns() {}

  /** The night with such stretches as runs, all numbered anew. */
  static Night split(Night night) {
    List<GuideRun> runs = new ArrayList<>();
    for (GuideRun run : night.runs()) {
      parts(run).forEach(part -> runs.add(part.withId(runs.size() + 1)));
    }
    return new Night(night.name(), runs, night.sources(), night.utcOffset());
  }

  private static List<GuideRun> parts(GuideRun run) {
    if (run.mode() != GuidingMode.GUIDED) {
      return List.of(run);
    }
    Frames frames = run.frames();
    List<Integer> cuts = new ArrayList<>(List.of(0));
    int begin = 0;
    while (begin < frames.size()) {
      int end = begin;
      while (end < frames.size() && !pushed(frames, end)) {
        end++;
      }
      int from = begin == 0 ? 0 : Math.min(end, begin - 1 + AFTER_PULSE);
      if (leftAlone(frames, from, end)) {
        cuts.add(from);
        cuts.add(end);
      }
      begin = end + 1;
    }
    cuts.add(frames.size());
    List<GuideRun> parts = new ArrayList<>();
    for (int c = 1; c < cuts.size(); c++) {
      if (cuts.get(c) > cuts.get(c - 1)) {
        parts.add(part(run, cuts.get(c - 1), cuts.get(c)));
      }
    }
    return parts;
  }

  private static boolean pushed(Frames frames, int i) {
    return frames.raPulseMillis(i) != 0 || frames.decPulseMillis(i) != 0;
  }

  private static boolean leftAlone(Frames frames, int from, int end) {
    if (end - from < 2
        || frames.timeSeconds(end - 1) - frames.timeSeconds(from) < LEFT_ALONE_SECONDS) {
      return false;
    }
    int used = 0;
    for (int i = from; i < end; i++) {
      used += frames.state(i) == FrameState.USED ? 1 : 0;
    }
    return used >= MOSTLY_USED * (end - from);
  }

  /** Rows that became no frame stay with the first part. */
  private static GuideRun part(GuideRun run, int from, int to) {
    Frames frames = run.frames().slice(from, to);
    boolean whole = from == 0;
    double first = frames.timeSeconds(0);
    boolean ends = to == run.frames().size();
    List<Note> notes =
        run.notes().stream()
            .filter(note -> whole || note.timeSeconds() >= first)
            .filter(note -> ends || note.timeSeconds() < run.frames().timeSeconds(to))
            .toList();
    return new GuideRun(
        run.id(),
        run.start(),
        pointing(run, first),
        run.camera(),
        run.loop(),
        frames,
        RowCounts.of(
            frames, whole ? run.counts().duplicate() : 0, whole ? run.counts().unusable() : 0),
        notes,
        run.sense());
  }

  private static Pointing pointing(GuideRun run, double first) {
    Pointing pointing = run.pointing();
    OptionalDouble hours = pointing.hourAngleHours();
    if (hours.isEmpty()) {
      return pointing;
    }
    double since = first - run.frames().timeSeconds(0);
    double later = hours.getAsDouble() + since * HOURS_PER_SECOND;
    return pointing.at(later > 12 ? later - 24 : later);
  }
}
