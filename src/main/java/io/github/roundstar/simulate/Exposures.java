package io.github.roundstar.simulate;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.simulate.FrameTruth.Column;
import io.github.roundstar.simulate.SimulatedExposure.Image;
import io.github.roundstar.sky.DifferentialRefraction;
import io.github.roundstar.sky.GuideTolerance;
import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.Site;
import io.github.roundstar.sky.StarPlace;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Takes the exposures of a simulated night: one after the other between dithers, from the moment
 * the star has settled. What a star's light does on the sensor is the true motion, the set point's
 * moves and the flexure between the cameras, frame by frame; the air's own motion is in the width.
 */
public final class Exposures {
  private static final double ARCSEC_PER_RADIAN_ARCMIN = 60;

  private final SimulatedNight night;
  private final ExposurePlan plan;
  private final List<SimulatedExposure> taken = new ArrayList<>();

  private Exposures(SimulatedNight night, ExposurePlan plan) {
    this.night = night;
    this.plan = plan;
  }

  /** All exposures of a night; none when the scenario has no main camera. */
  public static List<SimulatedExposure> of(SimulatedNight night) {
    if (night.scenario().exposures().isEmpty()) {
      return List.of();
    }
    Exposures exposures = new Exposures(night, night.scenario().exposures().get());
    night.runs().forEach(exposures::take);
    return List.copyOf(exposures.taken);
  }

  private void take(SimulatedRun run) {
    Frames frames = run.log().frames();
    int i = 0;
    while (i < frames.size()) {
      int ready = ready(frames, i);
      int end = nextDither(frames, ready);
      double latest = ready < frames.size() ? frames.timeSeconds(end - 1) : 0;
      double from = ready < frames.size() ? frames.timeSeconds(ready) : 1;
      while (from + plan.seconds() <= latest) {
        expose(run, from);
        from += plan.seconds() + plan.gapSeconds();
      }
      i = Math.max(i + 1, end);
    }
  }

  /** First frame from which an exposure may start. */
  private int ready(Frames frames, int from) {
    int i = from;
    if (Double.isNaN(plan.waitSeconds())) {
      while (i < frames.size()
          && (frames.state(i) == FrameState.SETTLING || frames.state(i) == FrameState.DITHER)) {
        i++;
      }
    } else if (frames.ditherStart(from)) {
      double begin = frames.timeSeconds(from) + plan.waitSeconds();
      while (i < frames.size() && frames.timeSeconds(i) < begin) {
        i++;
      }
    }
    return i;
  }

  private static int nextDither(Frames frames, int from) {
    int i = from + 1;
    while (i < frames.size() && !frames.ditherStart(i)) {
      i++;
    }
    return Math.min(i, frames.size());
  }

  private void expose(SimulatedRun run, double from) {
    Frames frames = run.log().frames();
    RunPlan runPlan = night.scenario().runs().get(run.truth().id() - 1);
    StarPath sky = new StarPath(night.scenario(), runPlan);
    List<double[]> path = new ArrayList<>();
    List<Double> turns = new ArrayList<>();
    for (int i = 0; i < frames.size(); i++) {
      double time = frames.timeSeconds(i);
      if (time >= from && time <= from + plan.seconds()) {
        double turn = sky.rotationDegrees(0, time);
        turns.add(turn);
        double[] place = place(run, i, time, StrictMath.toRadians(turn));
        double[] lifted = lifted(runPlan, time);
        path.add(new double[] {place[0] + lifted[0], place[1] + lifted[1]});
      }
    }
    if (path.size() < 2) {
      return;
    }
    Image still = optics().plus(dispersion(runPlan, from));
    Instant start = run.log().start().orElseThrow();
    double clock = from + plan.clockOffsetSeconds();
    taken.add(
        new SimulatedExposure(
            String.format(Locale.ROOT, "exposure-%03d.fits", taken.size() + 1),
            start.plus(Duration.ofMillis((long) StrictMath.rint(clock * 1000))),
            run.truth().id(),
            from,
            plan.seconds(),
            path,
            turns,
            SeenShape.of(path, still, covariance(path).plus(still))));
  }

  /** East and north of the image's centre at a frame. */
  private double[] place(SimulatedRun run, int i, double time, double turnRadians) {
    double hours =
        (time
                + (run.log().start().orElseThrow().toEpochMilli()
                        - night.runs().get(0).log().start().orElseThrow().toEpochMilli())
                    / 1000.0)
            / 3600;
    double east = -plan.guideStarEastArcmin() * ARCSEC_PER_RADIAN_ARCMIN;
    double north = -plan.guideStarNorthArcmin() * ARCSEC_PER_RADIAN_ARCMIN;
    FrameTruth truth = run.frames();
    return new double[] {
      truth.at(Column.MOTION_RA, i)
          - truth.at(Column.CORRECTION_RA, i)
          + plan.flexureRaArcsecPerHour() * hours
          + turnRadians * north,
      truth.at(Column.MOTION_DEC, i)
          - truth.at(Column.CORRECTION_DEC, i)
          + plan.flexureDecArcsecPerHour() * hours
          - turnRadians * east
    };
  }

  /** What the air moves the image's centre by against the guide star, since the run's start. */
  private double[] lifted(RunPlan run, double time) {
    if (night.scenario().air().isEmpty()) {
      return new double[2];
    }
    Scenario.Air air = night.scenario().air().get();
    DifferentialRefraction refraction =
        new DifferentialRefraction(
            new Site(night.scenario().evening().latitudeDegrees()),
            new Refraction(air.pressureHectopascal(), air.temperatureCelsius()),
            run.star(0),
            -plan.guideStarEastArcmin() * ARCSEC_PER_RADIAN_ARCMIN,
            -plan.guideStarNorthArcmin() * ARCSEC_PER_RADIAN_ARCMIN);
    return refraction
        .shift(0, time)
        .map(shift -> new double[] {shift.eastArcsec(), shift.northArcsec()})
        .orElse(new double[2]);
  }

  private static Image covariance(List<double[]> path) {
    double east = 0;
    double north = 0;
    for (double[] at : path) {
      east += at[0] / path.size();
      north += at[1] / path.size();
    }
    double ee = 0;
    double nn = 0;
    double en = 0;
    for (double[] at : path) {
      ee += (at[0] - east) * (at[0] - east) / path.size();
      nn += (at[1] - north) * (at[1] - north) / path.size();
      en += (at[0] - east) * (at[1] - north) / path.size();
    }
    return new Image(ee, nn, en);
  }

  /** Star image of perfect guiding in the centre. */
  private Image optics() {
    ExposurePlan.Optics optics = plan.optics();
    double elongation = optics.radial() ? 1 : optics.elongation();
    double minor = optics.fwhmArcsec() / GuideTolerance.FWHM_PER_SIGMA;
    double variance = minor * minor;
    return new Image(variance, variance, 0)
        .plus(Image.along(variance * (elongation * elongation - 1), optics.angleDegrees()));
  }

  /** Colours spread along the vertical as tan z. */
  private Image dispersion(RunPlan run, double from) {
    if (plan.dispersionArcsec() == 0) {
      return new Image(0, 0, 0);
    }
    Site site = new Site(night.scenario().evening().latitudeDegrees());
    StarPlace star = run.star(from + plan.seconds() / 2);
    double zenith = 90 - site.altitudeDegrees(star);
    double sigma = plan.dispersionArcsec() * StrictMath.tan(StrictMath.toRadians(zenith));
    return Image.along(sigma * sigma, site.parallacticAngleDegrees(star));
  }
}
