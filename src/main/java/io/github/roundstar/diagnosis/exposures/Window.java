package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Cadence;
import io.github.roundstar.sky.DifferentialRefraction;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * One exposure laid onto the guide log.
 *
 * @param frame the exposure
 * @param start when it started, by the log's clock
 * @param measured its stars
 * @param run the run that covers most of it; nothing when none does
 * @param from first frame of the run's track inside
 * @param to one past the last
 * @param startSeconds its start, since the run's start [s]
 * @param coverage share of it with measured frames
 * @param lostShare share of it in which the star was lost
 * @param motion motion of the star during it
 */
record Window(
    ExposureFrame frame,
    Instant start,
    Optional<MeasuredShape> measured,
    Optional<GuidedRun> run,
    int from,
    int to,
    double startSeconds,
    double coverage,
    double lostShare,
    WindowMotion motion) {
  static Window of(
      ExposureFrame frame, Instant start, List<GuidedRun> runs, Optional<MeasuredShape> measured) {
    Window best =
        new Window(
            frame,
            start,
            measured,
            Optional.empty(),
            0,
            0,
            0,
            0,
            0,
            new WindowMotion(0, 0, 0, 0, 0, 0, 0));
    for (GuidedRun run : runs) {
      if (run.run().start().isPresent()) {
        Window window = on(frame, start, run, measured);
        best = window.coverage + window.lostShare > best.coverage + best.lostShare ? window : best;
      }
    }
    return best;
  }

  private static Window on(
      ExposureFrame frame, Instant start, GuidedRun run, Optional<MeasuredShape> measured) {
    Duration since = Duration.between(run.run().start().orElseThrow(), start);
    double begin = since.getSeconds() + since.getNano() * 1e-9;
    double end = begin + frame.seconds();
    StarTrack track = run.track();
    int from = firstAtOrAfter(track, begin);
    int to = firstAtOrAfter(track, end);
    double cadence = Cadence.medianSeconds(run.run().frames()).orElse(0);
    double share = frame.seconds() > 0 ? cadence / frame.seconds() : 0;
    return new Window(
        frame,
        start,
        measured,
        Optional.of(run),
        from,
        to,
        begin,
        Math.min(1, (to - from) * share),
        Math.min(1, lost(run.run().frames(), begin, end) * share),
        WindowMotion.of(track, from, to, i -> true));
  }

  private static int lost(Frames frames, double begin, double end) {
    int lost = 0;
    for (int i = 0; i < frames.size(); i++) {
      boolean inside = frames.timeSeconds(i) >= begin && frames.timeSeconds(i) < end;
      lost += inside && frames.state(i) == FrameState.LOST ? 1 : 0;
    }
    return lost;
  }

  private static int firstAtOrAfter(StarTrack track, double seconds) {
    int low = 0;
    int high = track.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (track.seconds(middle) < seconds) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Core of the star image that some of its frames make. */
  CoreShape core(IntPredicate wanted, double[] turn, double roundFwhm) {
    double round = PredictedShape.variance(roundFwhm);
    return run.map(r -> CoreShape.of(r.track(), from, to, wanted, turn, round))
        .orElseGet(() -> new CoreShape(round, round, 0));
  }

  /**
   * The exposure with the star drifting by so much from its start to its end, beside all that it
   * did by the log: what both move along one axis adds up or cancels.
   */
  Window drifting(double eastArcsec, double northArcsec) {
    if (run.isEmpty()) {
      return this;
    }
    double perSecond = 1 / frame.seconds();
    StarTrack track = run.get().track().drifting(eastArcsec * perSecond, northArcsec * perSecond);
    return new Window(
        frame,
        start,
        measured,
        Optional.of(run.get().on(track)),
        from,
        to,
        startSeconds,
        coverage,
        lostShare,
        WindowMotion.of(track, from, to, i -> true));
  }

  /** Middle of the exposure since the run's start [s]. */
  double middleSeconds() {
    return startSeconds + frame.seconds() / 2;
  }

  Optional<ZenithDirection> zenith(Equipment equipment) {
    return run.flatMap(r -> ZenithDirection.of(r.run(), equipment, middleSeconds()));
  }

  /** What the field's turn about the guide star adds in the image's centre: (ee, nn, en). */
  double[] turned(Optional<FieldTurn> turn, Equipment equipment) {
    return FieldPlace.guideStar(equipment)
        .map(star -> FieldPlace.CENTRE.turned(star, turnRadians(turn)))
        .orElse(new double[3]);
  }

  /** The same in each corner; none unless turn, guide star and sensor are known. */
  List<double[]> turnedCorners(Optional<FieldTurn> turn, Equipment equipment) {
    Optional<FieldPlace> star = FieldPlace.guideStar(equipment);
    return turn.isEmpty() || star.isEmpty()
        ? List.of()
        : FieldPlace.corners(equipment, ImageScale.of(frame, equipment)).stream()
            .map(corner -> corner.turned(star.get(), turnRadians(turn)))
            .toList();
  }

  /** The field's turn as a cause; nothing unless it and the guide star's place are known. */
  Optional<Cause> turnCause(
      Optional<FieldTurn> turn, Equipment equipment, Optional<Estimate> corner) {
    Optional<FieldPlace> star = FieldPlace.guideStar(equipment);
    if (turn.isEmpty() || star.isEmpty()) {
      return Optional.empty();
    }
    String there =
        corner
            .map(
                c -> String.format(Locale.ROOT, ": elongation %.2f in the worst corner", c.value()))
            .orElse("");
    return Optional.of(
        new Cause(
            "field-rotation",
            String.format(
                    Locale.ROOT,
                    "the axis error turns the field by %.1f arcmin about the guide star, %.0f arcmin"
                        + " from the image's centre",
                    Math.abs(Math.toDegrees(turnRadians(turn)) * 60),
                    Math.hypot(star.get().eastArcsec(), star.get().northArcsec()) / 60)
                + there));
  }

  /** Refraction between guide star and image, its time zero at the run's start. */
  Answer<DifferentialRefraction> air(Equipment equipment) {
    return run.map(r -> GuideStarAir.of(r.run(), equipment))
        .orElse(Answer.none("the guide log does not cover the exposure"));
  }

  /** Rotation of the field during the exposure [rad]. */
  double turnRadians(Optional<FieldTurn> turn) {
    return turn.isEmpty() || run.isEmpty()
        ? 0
        : turn.get().radiansBetween(run.get().run(), startSeconds, startSeconds + frame.seconds());
  }
}
