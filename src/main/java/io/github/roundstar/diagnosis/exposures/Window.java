package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.motion.Cadence;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
  private static final double ARCSEC_PER_ARCMIN = 60;

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

  /** Middle of the exposure since the run's start [s]. */
  double middleSeconds() {
    return startSeconds + frame.seconds() / 2;
  }

  Optional<ZenithDirection> zenith(Equipment equipment) {
    return run.flatMap(r -> ZenithDirection.of(r.run(), equipment, middleSeconds()));
  }

  /** What the field's turn about the guide star adds in the image's centre: (ee, nn, en). */
  double[] turned(Optional<FieldTurn> turn, Equipment equipment) {
    double angle = turnRadians(turn);
    OptionalDouble x = equipment.guide().starXArcmin();
    OptionalDouble y = equipment.guide().starYArcmin();
    if (angle == 0 || x.isEmpty() || y.isEmpty()) {
      return new double[3];
    }
    double up = Math.toRadians(equipment.imaging().positionAngleDegrees().orElse(0));
    double right = x.getAsDouble() * (equipment.imaging().mirrored() ? -1 : 1);
    double east = (-right * Math.cos(up) + y.getAsDouble() * Math.sin(up)) * ARCSEC_PER_ARCMIN;
    double north = (right * Math.sin(up) + y.getAsDouble() * Math.cos(up)) * ARCSEC_PER_ARCMIN;
    return PredictedShape.trail(-angle * north, angle * east);
  }

  /** Rotation of the field during the exposure [rad]. */
  double turnRadians(Optional<FieldTurn> turn) {
    return turn.isEmpty() || run.isEmpty()
        ? 0
        : turn.get().radiansBetween(run.get().run(), startSeconds, startSeconds + frame.seconds());
  }
}
