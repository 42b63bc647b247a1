package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.Cadence;
import io.github.roundstar.motion.Gears;
import io.github.roundstar.motion.GuidedDrift;
import io.github.roundstar.motion.HourAngles;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Backlash;
import io.github.roundstar.results.Budget;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.Loop;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Sticking;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One run as the result shows it. */
final class RunFigures {
  static final String NO_FRAME = "no frame of the run was usable";

  private RunFigures() {}

  /**
   * The record.
   *
   * @param study what was found out about the run
   * @param ra what was found out about its guiding in right ascension
   * @param dec the same in declination
   * @param before the same about the run before it
   * @param imagingArcsecPerPixel scale of the main camera
   * @param gears gears whose period is known
   * @param equipment what the user says of the mount
   * @param siteShown whether what gives the site away may be told
   * @param scope where reasons for missing figures go
   */
  static RunResult of(
      RunStudy study,
      LoopStudy ra,
      LoopStudy dec,
      Optional<RunStudy> before,
      OptionalDouble imagingArcsecPerPixel,
      Gears gears,
      Equipment equipment,
      boolean siteShown,
      Reasons.Scope scope) {
    GuideRun run = study.run();
    return new RunResult(
        run.id(),
        scope.orNull("/startUtc", run.start().map(Instants::text), Instants.UNDATED),
        study.durationSeconds(),
        run.mode(),
        run.frames().size(),
        run.counts(),
        scope.orNull(
            "/cadenceSeconds", Cadence.medianSeconds(run.frames()), "the run has one frame only"),
        scope.orNull(
            "/guideScaleArcsecPerPixel", run.camera().scaleArcsecPerPixel(), add("guide_scale")),
        scope.orNull("/declinationDeg", run.pointing().declinationDegrees(), add("declination")),
        hourAngle(run, equipment, siteShown, scope),
        scope.orNull("/pierSide", run.pointing().pierSide(), add("pier_side")),
        scope.part("/guided", () -> guided(study, imagingArcsecPerPixel, scope), null),
        scope.part(
            "/driftArcsecPerMinuteSky",
            () ->
                new AxisDrift(
                    scope.orNull("/driftArcsecPerMinuteSky/ra", study.raDriftSky()),
                    scope.orNull("/driftArcsecPerMinuteSky/dec", study.decDrift())),
            new AxisDrift(null, null)),
        scope.part(
            "/responseArcsecPerSecond",
            () -> new PulseFigures(study, equipment, scope).response(),
            new Response(null, null, null)),
        scope.part("/loop", () -> new LoopFigures(ra, dec, scope).loop(), new Loop(null, null)),
        scope.part(
            "/noiseFloorArcsec",
            () -> NoiseFigures.of(study, scope),
            new NoiseFloor(null, null, null)),
        scope.part(
            "/periodic",
            () -> PeriodicFigures.of(study.periodicOfRun(), gears, run.sense(), scope),
            null),
        scope.part(
            "/backlashArcsecAxis",
            () -> new PulseFigures(study, equipment, scope).backlash(),
            new Backlash(null, null)),
        scope.part(
            "/stickingArcsecAxis",
            () -> new PulseFigures(study, equipment, scope).sticking(),
            new Sticking(null)),
        scope.part(
            "/budget",
            () -> new LoopFigures(ra, dec, scope).budget(),
            new Budget(null, null, null, null)),
        scope.part(
            "/settling", () -> SettlingFigures.of(List.of(run), scope), SettlingFigures.NONE),
        scope.part("/events", () -> RunEvents.of(study, before, scope), List.of()));
  }

  private static Guided guided(
      RunStudy study, OptionalDouble imagingArcsecPerPixel, Reasons.Scope scope) {
    if (study.scatter().isEmpty()) {
      return scope.orNull("/guided", Answer.none(NO_FRAME));
    }
    return new GuidedFigures(imagingArcsecPerPixel, study.run().sense(), scope)
        .of(
            study.scatter().get(),
            guidedDrift(study.run(), Axis.RA),
            guidedDrift(study.run(), Axis.DEC));
  }

  private static Double hourAngle(
      GuideRun run, Equipment equipment, boolean siteShown, Reasons.Scope scope) {
    Answer<Double> hours = HourAngles.of(run, equipment);
    return scope.orNull(
        "/hourAngleHours",
        siteShown
            ? hours
            : hours.then(
                told -> Answer.none("left out on request, since with the time it tells the site")));
  }

  private static Answer<Estimate> guidedDrift(GuideRun run, Axis axis) {
    return GuidedDrift.arcsecPerMinute(run.frames(), axis)
        .map(Answer::of)
        .orElseGet(
            () ->
                Answer.none(
                    "too few used frames that are independent of each other: record for longer"));
  }

  private static String add(String key) {
    return "the log does not tell: add " + key + " to its header";
  }
}
