package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.AxisMotion;
import io.github.roundstar.motion.AxisNight;
import io.github.roundstar.motion.CosDec;
import io.github.roundstar.motion.Disturbance;
import io.github.roundstar.motion.DisturbanceSearch;
import io.github.roundstar.motion.MountDrift;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.motion.StarScatter;
import io.github.roundstar.results.Faults;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ForkJoinTask;
import java.util.stream.IntStream;

/**
 * What is found out about one run by itself.
 *
 * @param run the run
 * @param scatter the used offsets; nothing when no frame was usable
 * @param ra motion of the mount in right ascension: at the axis where that can be had, else on the
 *     sky with cosine 1
 * @param dec motion of the mount in declination
 * @param periodic drift and periodic error over all runs of the night; on the sky, and then good
 *     for traces only, where the axis cannot be had
 * @param decDriftFit drift in declination with the motion it was fitted to
 * @param axis whether {@code ra} is at the axis, or why not
 * @param disturbances what the star shows that the log does not tell
 * @param turnSeconds one turn of the worm, whose swing passes for drift in a shorter run [s]
 */
record RunStudy(
    GuideRun run,
    Optional<StarScatter> scatter,
    Answer<AxisMotion> ra,
    Answer<AxisMotion> dec,
    Answer<PeriodicError> periodic,
    Answer<MountDrift> decDriftFit,
    Answer<Double> axis,
    List<Disturbance> disturbances,
    double turnSeconds) {
  /** A slow worm's turn, for mounts whose worm is not known; common practice, no source [s]. */
  private static final double USUAL_TURN_SECONDS = 480;

  private static final Answer<MountDrift> LOST_DRIFT = Answer.none(Faults.BECAUSE);

  /**
   * Studies the runs of a night.
   *
   * @param faults hears of what a fault took
   */
  static List<RunStudy> of(List<GuideRun> runs, Equipment equipment, Faults faults) {
    // The two axes take all the time and know nothing of each other.
    ForkJoinTask<AxisNight> beside =
        ForkJoinTask.adapt(
                () ->
                    faults.within(
                        "/night motion in declination",
                        () -> AxisNight.dec(runs, equipment),
                        AxisNight.none(runs.size(), Faults.BECAUSE)))
            .fork();
    AxisNight ra =
        faults.within(
            "/night motion in right ascension",
            () -> AxisNight.ra(runs, equipment),
            AxisNight.none(runs.size(), Faults.BECAUSE));
    AxisNight dec = beside.join();
    return IntStream.range(0, runs.size())
        .parallel()
        .mapToObj(
            i ->
                of(
                    runs.get(i),
                    ra.runs().get(i),
                    dec.runs().get(i),
                    ra.periodic(),
                    equipment,
                    "/runs/" + i,
                    faults))
        .toList();
  }

  private static RunStudy of(
      GuideRun run,
      Answer<AxisMotion> ra,
      Answer<AxisMotion> dec,
      Answer<PeriodicError> periodic,
      Equipment equipment,
      String place,
      Faults faults) {
    return new RunStudy(
        run,
        faults.within(
            place + " scatter", () -> StarScatter.of(run.frames()), Optional.<StarScatter>empty()),
        ra,
        dec,
        periodic,
        faults.within(place + " drift in declination", () -> dec.then(MountDrift::of), LOST_DRIFT),
        CosDec.of(run),
        faults.within(
            place + " disturbances",
            () -> DisturbanceSearch.of(run, ra.value(), dec.value()),
            List.<Disturbance>of()),
        equipment.mount().wormPeriodSeconds().orElse(USUAL_TURN_SECONDS));
  }

  /** Drift in right ascension on the sky [arcsec/min]. */
  Answer<Estimate> raDriftSky() {
    boolean turns = ra.value().filter(motion -> motion.known().familyCount() > 0).isPresent();
    if (ra.value().isPresent() && !turns && durationSeconds() < turnSeconds) {
      return Answer.none(
          String.format(
              Locale.ROOT,
              "the run is shorter than a turn of the worm, whose swing passes for drift: record at"
                  + " least %.0f minutes",
              Math.ceil(turnSeconds / 60)));
    }
    return Directions.of(run.sense(), Axis.RA, ra.then(this::drift));
  }

  /** Drift in declination [arcsec/min]. */
  Answer<Estimate> decDrift() {
    return Directions.of(run.sense(), Axis.DEC, dec.then(this::drift));
  }

  private Answer<Estimate> drift(AxisMotion motion) {
    return motion
        .known()
        .driftArcsecPerMinuteSky(run.id())
        .map(drift -> Answer.of(drift.estimate()))
        .orElseGet(() -> Answer.none("the run is too short: record at least a few minutes"));
  }

  /** The same, told of this run only where it is the only one. */
  Answer<PeriodicError> periodicOfRun() {
    return periodicAtAxis()
        .then(
            found ->
                found.runs() == 1 && found.index(run.id()).isPresent()
                    ? Answer.of(found)
                    : Answer.none("told over all runs of the night: see the whole night"));
  }

  /** Periodic error over all runs of the night, where the motion at the axis can be had. */
  Answer<PeriodicError> periodicAtAxis() {
    return periodic.then(found -> axis.map(cosine -> found));
  }

  double durationSeconds() {
    Frames frames = run.frames();
    return frames.size() == 0 ? 0 : frames.timeSeconds(frames.size() - 1) - frames.timeSeconds(0);
  }
}
