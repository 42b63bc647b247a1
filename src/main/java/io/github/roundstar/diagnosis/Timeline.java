package io.github.roundstar.diagnosis;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Note;
import io.github.roundstar.motion.Cadence;
import io.github.roundstar.motion.Disturbance;
import io.github.roundstar.results.Band;
import io.github.roundstar.results.Mark;
import io.github.roundstar.results.RunTrace;
import io.github.roundstar.signal.Envelope;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** The night's timeline: guided offsets as envelopes, and marks for what happened. */
final class Timeline {
  /** Pixel columns of the whole timeline. */
  private static final int COLUMNS = 1000;

  private static final Map<FrameState, Mark.Kind> STRETCHES =
      Map.of(
          FrameState.SETTLING, Mark.Kind.SETTLING,
          FrameState.LOST, Mark.Kind.LOST,
          FrameState.IDLE, Mark.Kind.IDLE);

  private Timeline() {}

  static List<RunTrace> of(List<RunStudy> studies, NightClock clock) {
    List<GuideRun> runs = studies.stream().map(RunStudy::run).toList();
    double total = runs.stream().mapToDouble(Timeline::span).sum();
    List<RunTrace> traces = new ArrayList<>();
    for (int r = 0; r < runs.size(); r++) {
      GuideRun run = runs.get(r);
      Frames frames = run.frames();
      if (frames.size() == 0) {
        continue;
      }
      double shift = clock.shiftSeconds(r);
      int columns = total == 0 ? 1 : (int) Math.max(1, COLUMNS * span(run) / total);
      traces.add(
          new RunTrace(
              run.id(),
              shift + frames.timeSeconds(0),
              shift + frames.timeSeconds(frames.size() - 1),
              band(frames, shift, frames::raArcsec, columns),
              band(frames, shift, frames::decArcsec, columns),
              marks(studies.get(r), shift, r > 0 && Flips.between(runs.get(r - 1), run))));
    }
    return traces;
  }

  private static double span(GuideRun run) {
    Frames frames = run.frames();
    return frames.size() == 0 ? 0 : frames.timeSeconds(frames.size() - 1) - frames.timeSeconds(0);
  }

  private static Band band(Frames frames, double shift, IntToDoubleFunction offset, int columns) {
    int[] measured = IntStream.range(0, frames.size()).filter(frames::measured).toArray();
    double[] x = Arrays.stream(measured).mapToDouble(i -> shift + frames.timeSeconds(i)).toArray();
    double[] y = Arrays.stream(measured).mapToDouble(offset).toArray();
    if (x.length == 0) {
      return Band.of(x, x, x, x);
    }
    double cadence = Cadence.medianSeconds(frames).orElse(0);
    List<Envelope> parts =
        Stretches.of(x, cadence, columns).stream()
            .map(s -> Envelope.of(part(x, s), part(y, s), s.columns()))
            .toList();
    return Band.of(
        column(parts, e -> e::x),
        column(parts, e -> e::min),
        column(parts, e -> e::median),
        column(parts, e -> e::max));
  }

  private static double[] part(double[] values, Stretches.Stretch stretch) {
    return Arrays.copyOfRange(values, stretch.from(), stretch.to());
  }

  private static double[] column(
      List<Envelope> parts, Function<Envelope, IntToDoubleFunction> value) {
    return Stretches.joined(
        parts.stream()
            .map(e -> IntStream.range(0, e.columns()).mapToDouble(value.apply(e)::applyAsDouble))
            .map(DoubleStream::toArray)
            .toList());
  }

  private static List<Mark> marks(RunStudy study, double shift, boolean flipped) {
    GuideRun run = study.run();
    Frames frames = run.frames();
    List<Mark> marks = new ArrayList<>();
    if (flipped) {
      double at = shift + frames.timeSeconds(0);
      marks.add(new Mark(Mark.Kind.FLIP, at, at, ""));
    }
    int begin = 0;
    while (begin < frames.size()) {
      if (frames.ditherStart(begin)) {
        double at = shift + frames.timeSeconds(begin);
        marks.add(new Mark(Mark.Kind.DITHER, at, at, ""));
      }
      FrameState state = frames.state(begin);
      int end = begin + 1;
      while (end < frames.size() && frames.state(end) == state && !frames.ditherStart(end)) {
        end++;
      }
      if (STRETCHES.containsKey(state)) {
        marks.add(
            new Mark(
                STRETCHES.get(state),
                shift + frames.timeSeconds(begin),
                shift + frames.timeSeconds(end - 1),
                ""));
      }
      begin = end;
    }
    study.disturbances().forEach(disturbance -> marks.add(mark(disturbance, shift)));
    for (Note note : run.notes()) {
      double at = shift + note.timeSeconds();
      marks.add(new Mark(Mark.Kind.NOTE, at, at, note.text()));
    }
    return marks;
  }

  private static Mark mark(Disturbance disturbance, double shift) {
    String size =
        disturbance.sizeArcsec().isPresent()
            ? String.format(Locale.ROOT, " of %.1f arcsec", disturbance.sizeArcsec().getAsDouble())
            : "";
    String light =
        disturbance.lightLost().isPresent()
            ? String.format(
                Locale.ROOT,
                " that took %.0f %% of the light",
                100 * disturbance.lightLost().getAsDouble())
            : "";
    return new Mark(
        disturbance.kind() == Disturbance.Kind.CLOUD ? Mark.Kind.CLOUD : Mark.Kind.JOLT,
        shift + disturbance.startSeconds(),
        shift + disturbance.endSeconds(),
        disturbance.kind().word().replace('-', ' ') + size + light);
  }
}
