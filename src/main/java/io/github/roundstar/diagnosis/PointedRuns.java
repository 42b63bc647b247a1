package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.CosDec;
import io.github.roundstar.motion.HourAngles;
import io.github.roundstar.motion.MountDrift;
import io.github.roundstar.motion.PointedRun;
import io.github.roundstar.sky.Site;
import io.github.roundstar.sky.StarPlace;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The runs of a night in which a polar axis can be looked for, and why others are left out. */
final class PointedRuns {
  /** Nearer to the pole than this, north and east lose their meaning within a run [deg]. */
  private static final double HIGHEST_DECLINATION = 89;

  /** Refraction near the horizon depends on the weather of the day [deg]. */
  static final double LOWEST_ALTITUDE = 15;

  /** A clock that stands still while the night goes on cannot be right by so much [s]. */
  private static final double STALE_SECONDS = 600;

  private PointedRuns() {}

  /**
   * At least one run, or the reason why the first one cannot be used.
   *
   * @param site nothing where the latitude is not known; nobody can then say how high a star stood
   */
  static Answer<List<PointedRun>> of(
      List<RunStudy> studies, Equipment equipment, Optional<Site> site) {
    Answer<String> stale = stale(studies.stream().map(RunStudy::run).toList());
    if (stale.value().isPresent()) {
      return Answer.none(stale.value().get());
    }
    List<PointedRun> usable = new ArrayList<>();
    String because = "there is no run";
    for (int i = studies.size() - 1; i >= 0; i--) {
      Answer<PointedRun> run = pointed(studies.get(i), equipment, site);
      run.value().ifPresent(found -> usable.add(0, found));
      because = run.value().isPresent() ? because : run.because();
    }
    return usable.isEmpty() ? Answer.none(because) : Answer.of(List.copyOf(usable));
  }

  private static Answer<PointedRun> pointed(
      RunStudy study, Equipment equipment, Optional<Site> site) {
    Pointing pointing = study.run().pointing();
    Frames frames = study.run().frames();
    Answer<Double> hourAngle = HourAngles.of(study.run(), equipment);
    if (pointing.declinationDegrees().isEmpty() || hourAngle.value().isEmpty()) {
      return Answer.none(
          pointing.hourAngleHours().isPresent() && hourAngle.value().isEmpty()
              ? hourAngle.because()
              : "declination or hour angle is not known: add declination and hour_angle to the"
                  + " log's header");
    }
    double declination = pointing.declinationDegrees().getAsDouble();
    if (Math.abs(declination) > HIGHEST_DECLINATION) {
      return Answer.none("the star stands within a degree of the pole: record one farther away");
    }
    if (frames.size() == 0) {
      return Answer.none("the run has no frame");
    }
    StarPlace zero =
        StarPlace.ofHours(hourAngle.value().get(), declination).later(-frames.timeSeconds(0));
    Optional<String> low = site.flatMap(known -> low(known, zero, frames));
    if (low.isPresent()) {
      return Answer.none(low.get());
    }
    Answer<MountDrift> drift = Directions.of(study.run().sense(), Axis.DEC, study.decDriftFit());
    return drift.then(
        dec ->
            study
                .decDrift()
                .map(
                    told ->
                        new PointedRun(
                            dec,
                            told,
                            CosDec.of(study.run())
                                .value()
                                .flatMap(cosine -> study.raDriftSky().value()),
                            zero,
                            pointing.pierSide())));
  }

  private static Optional<String> low(Site site, StarPlace zero, Frames frames) {
    double lowest =
        Math.min(
            site.altitudeDegrees(zero.later(frames.timeSeconds(0))),
            site.altitudeDegrees(zero.later(frames.timeSeconds(frames.size() - 1))));
    if (lowest >= LOWEST_ALTITUDE) {
      return Optional.empty();
    }
    return Optional.of(
        String.format(
            Locale.ROOT,
            lowest < 0
                ? "declination, hour angle and latitude put the star below the horizon: check"
                    + " their signs"
                : "the star stands below %.0f degrees, where refraction depends on the weather:"
                    + " record a higher one",
            LOWEST_ALTITUDE));
  }

  /** Two runs on one place of the sky at different times: the hour angle was not kept up. */
  private static Answer<String> stale(List<GuideRun> runs) {
    for (int i = 1; i < runs.size(); i++) {
      Pointing before = runs.get(i - 1).pointing();
      Pointing now = runs.get(i).pointing();
      boolean same =
          now.hourAngleHours().isPresent()
              && now.hourAngleHours().equals(before.hourAngleHours())
              && now.declinationDegrees().equals(before.declinationDegrees());
      if (same && secondsBetween(runs.get(i - 1), runs.get(i)) > STALE_SECONDS) {
        return Answer.of(
            "runs "
                + runs.get(i - 1).id()
                + " and "
                + runs.get(i).id()
                + " give the same star the same hour angle at different times: give each run its"
                + " own hour_angle");
      }
    }
    return Answer.none("the hour angles go with the time");
  }

  private static double secondsBetween(GuideRun first, GuideRun second) {
    if (first.start().isEmpty() || second.start().isEmpty()) {
      return 0;
    }
    return Duration.between(first.start().get(), second.start().get()).toSeconds();
  }
}
