package io.github.roundstar.simulate;

import io.github.roundstar.model.AxisLoop;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideCamera;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.LoopSettings;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.simulate.FrameTruth.Column;
import io.github.roundstar.sky.SiderealRate;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Puts a played run together: the log's settings, and the true figures of the whole run. */
final class Bookkeeping {
  private Bookkeeping() {}

  static SimulatedRun of(
      Scenario scenario,
      RunPlan run,
      int id,
      Frames frames,
      FrameTruth truth,
      double wormPhaseRadians,
      StarMotion motion,
      Disturbances disturbances) {
    GuideRun log =
        new GuideRun(
            id,
            Optional.of(start(scenario, run)),
            new Pointing(
                OptionalDouble.of(run.declinationDegrees()),
                OptionalDouble.of(run.hourAngleHours()),
                Optional.of(run.pierSide()),
                OptionalDouble.of(scenario.evening().latitudeDegrees())),
            new GuideCamera(
                OptionalDouble.of(scenario.evening().scaleArcsecPerPixel()),
                OptionalDouble.of(scenario.evening().exposureSeconds())),
            settings(scenario),
            frames,
            RowCounts.of(frames, 0, 0),
            List.of());
    RunTruth figures =
        new RunTruth(
            id,
            run.declinationDegrees(),
            run.hourAngleHours(),
            run.pierSide(),
            run.guided(),
            wormPhaseRadians,
            raFigures(scenario, run, frames, truth),
            decFigures(scenario, run, frames, truth),
            motion.rotationDegreesPerHour(run.durationMinutes() * 60),
            dithers(frames),
            disturbances.events);
    return new SimulatedRun(log, truth, figures);
  }

  private static Instant start(Scenario scenario, RunPlan run) {
    return scenario.evening().start().plusMillis((long) Math.rint(run.startMinutes() * 60_000));
  }

  private static LoopSettings settings(Scenario scenario) {
    LoopPlan loop = scenario.loop();
    return new LoopSettings(
        OptionalDouble.of(scenario.mount().guideRateSidereal()),
        axis(loop.ra()),
        axis(loop.dec()),
        OptionalDouble.of(loop.pulseLimitMillis()),
        Optional.of(loop.decDirection()));
  }

  private static AxisLoop axis(LoopPlan.Axis axis) {
    return new AxisLoop(OptionalDouble.of(axis.gain()), OptionalDouble.of(axis.deadbandArcsec()));
  }

  private static int dithers(Frames frames) {
    int dithers = 0;
    for (int i = 0; i < frames.size(); i++) {
      dithers += frames.ditherStart(i) ? 1 : 0;
    }
    return dithers;
  }

  private static RunTruth.Axis raFigures(
      Scenario scenario, RunPlan run, Frames frames, FrameTruth truth) {
    MountPlan mount = scenario.mount();
    double declared =
        mount.guideRateSidereal()
            * SiderealRate.ARCSEC_PER_SECOND
            * StarMotion.cosineOfDeclination(run);
    return new RunTruth.Axis(
        driftPerMinute(frames, truth, Column.STEADY_RA),
        driftPerMinute(frames, truth, Column.STEADY_RA, Column.WANDER_RA),
        deviation(frames, truth, Column.ERROR_RA),
        declared * mount.response().east(),
        declared * mount.response().west());
  }

  private static RunTruth.Axis decFigures(
      Scenario scenario, RunPlan run, Frames frames, FrameTruth truth) {
    MountPlan mount = scenario.mount();
    double declared = mount.guideRateSidereal() * SiderealRate.ARCSEC_PER_SECOND;
    double forward = declared * mount.response().north();
    double backward = declared * mount.response().south();
    boolean west = run.pierSide() == PierSide.WEST;
    return new RunTruth.Axis(
        driftPerMinute(frames, truth, Column.STEADY_DEC),
        driftPerMinute(frames, truth, Column.STEADY_DEC, Column.WANDER_DEC),
        deviation(frames, truth, Column.ERROR_DEC),
        west ? forward : backward,
        west ? backward : forward);
  }

  /** Slope of a straight line by least squares through the sum of the columns [arcsec/min]. */
  private static double driftPerMinute(Frames frames, FrameTruth truth, Column... columns) {
    int n = truth.size();
    double middle = (frames.timeSeconds(0) + frames.timeSeconds(n - 1)) / 2;
    double product = 0;
    double square = 0;
    for (int i = 0; i < n; i++) {
      double time = frames.timeSeconds(i) - middle;
      for (Column column : columns) {
        product += time * truth.at(column, i);
      }
      square += time * time;
    }
    return product / square * 60;
  }

  private static double deviation(Frames frames, FrameTruth truth, Column column) {
    int n = 0;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < frames.size(); i++) {
      if (frames.measured(i)) {
        n++;
        sum += truth.at(column, i);
        squares += truth.at(column, i) * truth.at(column, i);
      }
    }
    return n == 0 ? 0 : StrictMath.sqrt(Math.max(0, squares / n - sum / n * (sum / n)));
  }
}
