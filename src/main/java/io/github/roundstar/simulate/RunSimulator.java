package io.github.roundstar.simulate;

import io.github.roundstar.model.DecDirection;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.simulate.FrameTruth.Column;
import io.github.roundstar.sky.SiderealRate;
import java.util.Optional;

/** Plays one run frame by frame: expose, measure, answer with a pulse, move. */
final class RunSimulator {
  private final Scenario scenario;
  private final RunPlan run;
  private final int id;
  private final int frames;
  private final double wormPhaseRadians;
  private final Disturbances disturbances;
  private final StarMotion motion;
  private final Measurement measurement;
  private final Brightness brightness;
  private final GuidedAxis ra;
  private final GuidedAxis dec;
  private final Optional<Dithering> dithering;
  private final FramesBuilder log = new FramesBuilder();
  private final FrameTruth truth;

  RunSimulator(Scenario scenario, RunPlan run, int id) {
    long seed = scenario.evening().seed();
    this.scenario = scenario;
    this.run = run;
    this.id = id;
    frames = (int) Math.rint(run.durationMinutes() * 60 / scenario.evening().cadenceSeconds());
    wormPhaseRadians =
        run.wormPhaseRadians()
            .orElse(NoiseStream.of(seed, "worm-phase", id).between(0, 2 * Math.PI));
    disturbances = new Disturbances(scenario.sky(), run, seed, id);
    motion = new StarMotion(scenario, run, id, wormPhaseRadians, disturbances);
    measurement = new Measurement(scenario.sky(), seed, id);
    brightness =
        new Brightness(
            scenario.sky().star(),
            disturbances,
            NoiseStream.of(seed, "flux", id),
            NoiseStream.of(seed, "shot", id));
    ra = raAxis();
    dec = decAxis(run.play().orElse(NoiseStream.of(seed, "play", id).between(-1, 1)));
    dithering =
        scenario
            .dither()
            .filter(plan -> run.guided())
            .map(plan -> new Dithering(plan, NoiseStream.of(seed, "dither", id)));
    truth = new FrameTruth(frames);
  }

  SimulatedRun play() {
    double exposure = scenario.evening().exposureSeconds();
    double cadence = scenario.evening().cadenceSeconds();
    for (int i = 0; i < frames; i++) {
      if (i > 0) {
        motion.skip(cadence - exposure);
        measurement.skip(cadence - exposure);
      }
      frame(i, i * cadence);
    }
    return Bookkeeping.of(
        scenario, run, id, log.build(), truth, wormPhaseRadians, motion, disturbances);
  }

  private void frame(int i, double middle) {
    double exposure = scenario.evening().exposureSeconds();
    double from = middle - exposure / 2;
    double to = middle + exposure / 2;
    Brightness.Frame star = brightness.next(middle, scenario.evening().cadenceSeconds());
    StarMotion.Part moved = motion.next(from, to);
    Measurement.Error error = measurement.next(exposure, star.snr());
    Offset corrected =
        new Offset(ra.meanCorrectionArcsec(from, to), dec.meanCorrectionArcsec(from, to));
    boolean dithers = dithering.map(d -> d.begins(middle, star.lost())).orElse(false);
    Offset setPoint = dithering.map(Dithering::setPoint).orElse(Offset.ZERO);
    Offset seen = run.hotPixel() ? Offset.ZERO : moved.total().minus(corrected);
    Offset measured =
        seen.minus(setPoint).plus(error.total()).inCamera(scenario.mount().cameraAngleDegrees());
    record(i, moved, corrected, setPoint, error);
    log(middle, measured, star, dithers);
    if (run.guided()) {
      log.pulses(
          ra.answer(star.lost() ? Double.NaN : measured.ra(), to),
          dec.answer(star.lost() ? Double.NaN : measured.dec(), to));
    } else {
      log.pulses(0, 0);
    }
  }

  private void log(double time, Offset measured, Brightness.Frame star, boolean dithers) {
    if (star.lost()) {
      log.add(time, Double.NaN, Double.NaN).state(FrameState.LOST);
    } else {
      log.add(time, measured.ra(), measured.dec());
    }
    log.star(star.snr(), star.fluxAdu());
    if (dithers) {
      boolean told = scenario.dither().orElseThrow().logsShift();
      Offset shift = dithering.orElseThrow().shift();
      log.dither(told ? shift.ra() : Double.NaN, told ? shift.dec() : Double.NaN)
          .state(FrameState.DITHER);
    } else if (dithering.isPresent() && !star.lost()) {
      FrameState state = dithering.get().stateAfter(time, measured.radius());
      log.state(scenario.dither().orElseThrow().logsSettling() ? state : FrameState.USED);
    }
  }

  private void record(
      int i, StarMotion.Part moved, Offset corrected, Offset setPoint, Measurement.Error error) {
    truth.set(Column.MOTION_RA, Column.MOTION_DEC, i, moved.total());
    truth.set(Column.STEADY_RA, Column.STEADY_DEC, i, moved.steady());
    truth.set(Column.WANDER_RA, Column.WANDER_DEC, i, moved.wander());
    truth.set(Column.CORRECTION_RA, Column.CORRECTION_DEC, i, corrected);
    truth.set(Column.SET_POINT_RA, Column.SET_POINT_DEC, i, setPoint);
    truth.set(Column.ERROR_RA, Column.ERROR_DEC, i, error.total());
    truth.set(Column.AIR_RA, Column.AIR_DEC, i, error.air());
    truth.set(Column.DEC_LAG, i, dec.lagArcsec());
  }

  private GuidedAxis raAxis() {
    MountPlan mount = scenario.mount();
    double skyPerAxis = StarMotion.cosineOfDeclination(run);
    double limit = scenario.loop().pulseLimitMillis();
    double declared = mount.guideRateSidereal() * SiderealRate.ARCSEC_PER_SECOND;
    return new GuidedAxis(
        new PulseRule(scenario.loop().ra(), declared * skyPerAxis, -limit, limit),
        new AxisDrive(mount.slack().raBacklashArcsec(), mount.slack().raStictionArcsec(), 0),
        skyPerAxis,
        declared * mount.response().east(),
        declared * mount.response().west());
  }

  private GuidedAxis decAxis(double start) {
    MountPlan mount = scenario.mount();
    DecDirection ways = scenario.loop().decDirection();
    double limit = scenario.loop().pulseLimitMillis();
    double north = ways == DecDirection.BOTH || ways == DecDirection.NORTH ? limit : 0;
    double south = ways == DecDirection.BOTH || ways == DecDirection.SOUTH ? limit : 0;
    double declared = mount.guideRateSidereal() * SiderealRate.ARCSEC_PER_SECOND;
    return new GuidedAxis(
        new PulseRule(scenario.loop().dec(), declared, -south, north),
        new AxisDrive(mount.slack().decBacklashArcsec(), mount.slack().decStictionArcsec(), start),
        run.pierSide() == PierSide.WEST ? 1 : -1,
        declared * mount.response().north(),
        declared * mount.response().south());
  }
}
