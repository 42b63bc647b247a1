package io.github.roundstar.diagnosis;

import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.Cadence;
import io.github.roundstar.motion.GuidedDrift;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.RunResult;
import java.util.List;
import java.util.OptionalDouble;

/** One run as the result shows it. */
final class RunFigures {
  static final String NO_FRAME = "no frame of the run was usable";

  private RunFigures() {}

  /**
   * The record.
   *
   * @param study what was found out about the run
   * @param imagingArcsecPerPixel scale of the main camera
   * @param siteShown whether what gives the site away may be told
   * @param scope where reasons for missing figures go
   */
  static RunResult of(
      RunStudy study,
      OptionalDouble imagingArcsecPerPixel,
      boolean siteShown,
      Reasons.Scope scope) {
    GuideRun run = study.run();
    scope.notYet(
        "/responseArcsecPerSecond", "/loop", "/noiseFloorArcsec", "/backlashArcsecAxis", "/budget");
    return new RunResult(
        run.id(),
        run.start().map(Instants::text).orElse(null),
        study.durationSeconds(),
        run.mode(),
        run.frames().size(),
        run.counts(),
        orNull(Cadence.medianSeconds(run.frames())),
        orNull(run.camera().scaleArcsecPerPixel()),
        orNull(run.pointing().declinationDegrees()),
        hourAngle(run, siteShown, scope),
        run.pointing().pierSide().orElse(null),
        guided(study, imagingArcsecPerPixel, scope),
        new AxisDrift(
            scope.orNull("/driftArcsecPerMinuteSky/ra", study.raDriftSky()),
            scope.orNull("/driftArcsecPerMinuteSky/dec", study.decDrift())),
        null,
        null,
        null,
        PeriodicFigures.of(study.periodicAtAxis(), run.sense(), scope),
        null,
        null,
        SettlingFigures.of(List.of(run)),
        RunEvents.of(run.frames()));
  }

  private static Guided guided(
      RunStudy study, OptionalDouble imagingArcsecPerPixel, Reasons.Scope scope) {
    if (study.scatter().isEmpty()) {
      return scope.orNull("/guided", Answer.none(NO_FRAME));
    }
    return new GuidedFigures(imagingArcsecPerPixel, study.run().sense(), scope)
        .of(
            study.scatter().get(),
            GuidedDrift.arcsecPerMinute(study.run().frames(), Axis.RA).orElse(null),
            GuidedDrift.arcsecPerMinute(study.run().frames(), Axis.DEC).orElse(null));
  }

  private static Double hourAngle(GuideRun run, boolean siteShown, Reasons.Scope scope) {
    OptionalDouble hours = run.pointing().hourAngleHours();
    if (hours.isPresent() && !siteShown) {
      scope.note("/hourAngleHours", "left out on request, since with the time it tells the site");
      return null;
    }
    return orNull(hours);
  }

  private static Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }
}
