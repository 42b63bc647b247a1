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

  /** A shorter trail changes no star. */
  private static final double UNSEEN_ARCSEC = 0.05;

  /** Out of focus, stars are 1.4 times as long as wide. */
  private static final double ASTIGMATISM = 1.4 * 1.4 - 1;

  private final SimulatedNight night;
  private final ExposurePlan plan;
  private final List<SimulatedExposure> taken = new ArrayList<>();

  private Exposures(SimulatedNight night, ExposurePlan plan) {
    this.night = night;
    this.plan = plan;
  }

  /** All exposures of a night, by a plain camera where the scenario names none. */
  public static List<SimulatedExposure> of(SimulatedNight night) {
    Exposures exposures = new Exposures(night, night.scenario().camera());
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
    Image blur = dispersion(runPlan, from).plus(defocus(nightHours(run, from)));
    Image still = plan.optics().image(0, 0).plus(blur);
    Image image = seen(path, still);
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
            blur,
            image,
            corner(path, turns, blur, image)));
  }

  private static Image seen(List<double[]> path, Image still) {
    return SeenShape.of(path, still, covariance(path).plus(still));
  }

  /**
   * The longest star image in a corner; that of the centre where nothing changes over the field.
   */
  private Image corner(List<double[]> path, List<Double> turns, Image blur, Image centre) {
    ExposurePlan.Optics optics = plan.optics();
    double x = optics.widthPixels() / 2.0;
    double y = optics.heightPixels() / 2.0;
    double turn = StrictMath.toRadians(turns.get(turns.size() - 1) - turns.get(0));
    double trail = Math.abs(turn) * StrictMath.hypot(x, y) * optics.arcsecPerPixel();
    if (optics.growth() == ExposurePlan.Growth.EVEN && trail < UNSEEN_ARCSEC) {
      return centre;
    }
    Image worst = centre;
    for (double[] at : new double[][] {{x, y}, {-x, y}, {x, -y}, {-x, -y}}) {
      Image still = optics.image(at[0], at[1]).plus(blur);
      Image there = seen(turned(path, turns, at), still);
      worst = there.elongation() > worst.elongation() ? there : worst;
    }
    return worst;
  }

  /** The path of a star away from the field's centre. */
  private List<double[]> turned(List<double[]> path, List<Double> turns, double[] fromCentre) {
    double up = StrictMath.toRadians(plan.optics().positionAngleDegrees());
    double scale = plan.optics().arcsecPerPixel();
    double s = StrictMath.sin(up);
    double c = StrictMath.cos(up);
    double east = scale * (-fromCentre[0] * c + fromCentre[1] * s);
    double north = scale * (fromCentre[0] * s + fromCentre[1] * c);
    List<double[]> turned = new ArrayList<>();
    for (int i = 0; i < path.size(); i++) {
      double turn = StrictMath.toRadians(turns.get(i) - turns.get(0));
      turned.add(new double[] {path.get(i)[0] + turn * north, path.get(i)[1] - turn * east});
    }
    return turned;
  }

  /** East and north of the image's centre at a frame. */
  private double[] place(SimulatedRun run, int i, double time, double turnRadians) {
    double hours = nightHours(run, time);
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

  private double nightHours(SimulatedRun run, double seconds) {
    return (seconds
            + (run.log().start().orElseThrow().toEpochMilli()
                    - night.runs().get(0).log().start().orElseThrow().toEpochMilli())
                / 1000.0)
        / 3600;
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

  /** The focus goes away: blur that the telescope's astigmatism makes longer along one angle. */
  private Image defocus(double hours) {
    double sigma = plan.defocusArcsecPerHour() * hours / GuideTolerance.FWHM_PER_SIGMA;
    double variance = sigma * sigma;
    return new Image(variance, variance, 0)
        .plus(Image.along(variance * ASTIGMATISM, plan.optics().angleDegrees()));
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
