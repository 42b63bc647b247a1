package io.github.roundstar.simulate;

import io.github.roundstar.simulate.Brightness.CloudPassage;
import io.github.roundstar.simulate.Brightness.OtherStar;
import java.util.ArrayList;
import java.util.List;

/** The single events of one run: gusts, knocks, shifts, other stars and clouds. */
final class Disturbances {
  private static final double RUN_MARGIN_SECONDS = 60;

  final List<Curve> ra = new ArrayList<>();
  final List<Curve> dec = new ArrayList<>();
  final List<CloudPassage> clouds = new ArrayList<>();
  final List<OtherStar> otherStars = new ArrayList<>();
  final List<RunTruth.Event> events = new ArrayList<>();

  Disturbances(SkyPlan sky, RunPlan run, long seed, int id) {
    double seconds = run.durationMinutes() * 60;
    sky.gusts().ifPresent(gusts -> blow(gusts, seconds, NoiseStream.of(seed, "gusts", id)));
    sky.cloudRate()
        .ifPresent(rate -> drawClouds(rate, seconds, NoiseStream.of(seed, "clouds", id)));
    for (SkyPlan.Cloud cloud : sky.clouds()) {
      pass(since(cloud.atMinutes(), run), cloud.minutes() * 60, cloud.depth(), seconds);
    }
    for (SkyPlan.Knock knock : sky.knocks()) {
      double at = since(knock.atMinutes(), run);
      if (at >= 0 && at < seconds) {
        ra.add(Curve.step(at, knock.raArcsec()));
        dec.add(Curve.step(at, knock.decArcsec()));
        event(at, "knock", new Offset(knock.raArcsec(), knock.decArcsec()).radius());
      }
    }
    for (SkyPlan.Shift shift : sky.shifts()) {
      double at = since(shift.atMinutes(), run);
      if (at >= 0 && at < seconds) {
        ra.add(Curve.slide(at, shift.seconds(), shift.raArcsec()));
        dec.add(Curve.slide(at, shift.seconds(), shift.decArcsec()));
        event(at, "lasting-shift", new Offset(shift.raArcsec(), shift.decArcsec()).radius());
      }
    }
    for (SkyPlan.StarSwitch star : sky.switches()) {
      double at = since(star.atMinutes(), run);
      if (at >= 0 && at < seconds) {
        ra.add(Curve.step(at, star.raArcsec()));
        dec.add(Curve.step(at, star.decArcsec()));
        otherStars.add(new OtherStar(at, star.fluxRatio()));
        event(at, "star-switch", new Offset(star.raArcsec(), star.decArcsec()).radius());
      }
    }
    if (run.hotPixel()) {
      event(0, "stuck-star", 0);
    }
    events.sort((one, other) -> Double.compare(one.timeSeconds(), other.timeSeconds()));
  }

  private static double since(double nightMinutes, RunPlan run) {
    return (nightMinutes - run.startMinutes()) * 60;
  }

  private void blow(SkyPlan.Gusts gusts, double seconds, NoiseStream noise) {
    double rate = gusts.perHour() / 3600;
    for (double at = noise.waiting(rate); at < seconds; at += noise.waiting(rate)) {
      double size = gusts.amplitudeArcsec() * noise.between(0.5, 1.5);
      double duration = gusts.durationSeconds() * noise.between(0.5, 1.5);
      double east = noise.uniform() < 0.5 ? -size : size;
      double north = noise.uniform() < 0.5 ? -size : size;
      ra.add(Curve.swing(at, duration, east * StrictMath.sqrt(gusts.raShare())));
      dec.add(Curve.swing(at, duration, north * StrictMath.sqrt(1 - gusts.raShare())));
      event(at, "gust", size);
    }
  }

  private void drawClouds(SkyPlan.CloudRate rate, double seconds, NoiseStream noise) {
    double perSecond = rate.perHour() / 3600;
    for (double at = noise.waiting(perSecond); at < seconds; at += noise.waiting(perSecond)) {
      pass(at, rate.minutes() * 60 * noise.between(0.5, 1.5), rate.depth(), seconds);
    }
  }

  private void pass(double at, double duration, double depth, double runSeconds) {
    if (at + duration > -RUN_MARGIN_SECONDS && at < runSeconds) {
      clouds.add(new CloudPassage(at, duration, depth));
      event(at, "cloud", depth);
    }
  }

  private void event(double at, String kind, double size) {
    events.add(new RunTruth.Event(at, kind, size));
  }
}
