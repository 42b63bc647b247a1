package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.AxisRun;
import io.github.roundstar.motion.CosDec;
import io.github.roundstar.motion.DecMotion;
import io.github.roundstar.motion.Disturbance;
import io.github.roundstar.motion.DisturbanceSearch;
import io.github.roundstar.motion.Gears;
import io.github.roundstar.motion.MountDrift;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.motion.RaMotion;
import io.github.roundstar.motion.StarScatter;
import io.github.roundstar.results.Faults;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ForkJoinTask;

/**
 * What is found out about one run by itself.
 *
 * @param run the run
 * @param scatter the used offsets; nothing when no frame was usable
 * @param ra motion of the mount in right ascension: at the axis where that can be had, else on the
 *     sky with cosine 1
 * @param dec motion of the mount in declination
 * @param decDriftFit drift in declination with the motion it was fitted to
 * @param axis whether {@code ra} is at the axis, or why not
 * @param disturbances what the star shows that the log does not tell
 * @param turnSeconds one turn of the worm, whose swing passes for drift in a shorter run [s]
 */
record RunStudy(
    GuideRun run,
    Optional<StarScatter> scatter,
    Answer<RaMotion> ra,
    Answer<DecMotion> dec,
    Answer<MountDrift> decDriftFit,
    Answer<Double> axis,
    List<Disturbance> disturbances,
    double turnSeconds) {
  /** A slow worm's turn, for mounts whose worm is not known; common practice, no source [s]. */
  private static final double USUAL_TURN_SECONDS = 480;

  private static final Answer<RaMotion> LOST_RA = Answer.none(Faults.BECAUSE);
  private static final Answer<DecMotion> LOST_DEC = Answer.none(Faults.BECAUSE);
  private static final Answer<MountDrift> LOST_DRIFT = Answer.none(Faults.BECAUSE);

  /**
   * Studies a run.
   *
   * @param place of the run in the result, {@code /runs/0}
   * @param faults hears of what a fault took
   */
  static RunStudy of(GuideRun run, Equipment equipment, String place, Faults faults) {
    Answer<Double> cosine = CosDec.of(run);
    // The two axes take all the time and know nothing of each other.
    ForkJoinTask<Answer<DecMotion>> beside =
        ForkJoinTask.adapt(
                () ->
                    faults.within(
                        place + " motion in declination",
                        () -> DecMotion.of(run, equipment),
                        LOST_DEC))
            .fork();
    Answer<RaMotion> ra =
        faults.within(
            place + " motion in right ascension",
            () -> RaMotion.of(run, equipment, cosine.value().orElse(1.0), Gears.of(equipment)),
            LOST_RA);
    Answer<DecMotion> dec = beside.join();
    return new RunStudy(
        run,
        faults.within(
            place + " scatter", () -> StarScatter.of(run.frames()), Optional.<StarScatter>empty()),
        ra,
        dec,
        faults.within(
            place + " drift in declination",
            () -> dec.then(motion -> MountDrift.of(motion.quiet())),
            LOST_DRIFT),
        cosine,
        faults.within(
            place + " disturbances",
            () -> DisturbanceSearch.of(run, ra.value(), dec.value()),
            List.<Disturbance>of()),
        equipment.mount().wormPeriodSeconds().orElse(USUAL_TURN_SECONDS));
  }

  /** Drift in right ascension on the sky [arcsec/min]. */
  Answer<Estimate> raDriftSky() {
    if (ra.value().isPresent() && durationSeconds() < turnSeconds) {
      return Answer.none(
          String.format(
              Locale.ROOT,
              "the run is shorter than a turn of the worm, whose swing passes for drift: record at"
                  + " least %.0f minutes",
              Math.ceil(turnSeconds / 60)));
    }
    return Directions.of(
        run.sense(),
        Axis.RA,
        ra.then(motion -> motion.periodic().then(found -> drift(found, motion.quiet()))));
  }

  /** Drift in declination [arcsec/min]. */
  Answer<Estimate> decDrift() {
    return Directions.of(run.sense(), Axis.DEC, decDriftFit.map(MountDrift::arcsecPerMinute));
  }

  /**
   * Drift and periodic error; on the sky, and then good for the drift only, where the axis cannot
   * be had.
   */
  Answer<PeriodicError> periodic() {
    return ra.then(RaMotion::periodic);
  }

  /** Periodic error, where the motion at the axis can be had. */
  Answer<PeriodicError> periodicAtAxis() {
    return periodic().then(found -> axis.map(cosine -> found));
  }

  /** Motion at the axis without its jolts, where it can be had. */
  Answer<AxisRun> raAtAxis() {
    return ra.then(motion -> axis.map(cosine -> motion.quiet()));
  }

  double durationSeconds() {
    Frames frames = run.frames();
    return frames.size() == 0 ? 0 : frames.timeSeconds(frames.size() - 1) - frames.timeSeconds(0);
  }

  private static Answer<Estimate> drift(PeriodicError found, AxisRun axisRun) {
    return found
        .driftArcsecPerMinuteAxis(axisRun.runId())
        .map(drift -> Answer.of(drift.times(axisRun.cosine())))
        .orElseGet(() -> Answer.none("the run is too short: record at least a few minutes"));
  }
}
