package io.github.roundstar.simulate;

import java.util.ArrayList;
import java.util.List;

/** The star's motion in the field with no corrections: what guiding has to take out. */
final class StarMotion {
  private final StarPath path;
  private final Curve creepRa;
  private final Curve creepDec;
  private final Curve mechanicsRa;
  private final Curve mechanicsDec;
  private final Wander wanderRa;
  private final Wander wanderDec;

  /**
   * The motion over one exposure.
   *
   * @param total all of it
   * @param steady the part that is drift
   * @param wander the part that is a random walk
   */
  record Part(Offset total, Offset steady, Offset wander) {}

  StarMotion(Scenario scenario, RunPlan run, int id, double wormPhase, Disturbances disturbances) {
    MountPlan mount = scenario.mount();
    long seed = scenario.evening().seed();
    double skyPerAxis = cosineOfDeclination(run);
    path = new StarPath(scenario, run);
    creepRa =
        Curve.ramp(
            mount.creep().rateErrorArcsecPerMinute() * skyPerAxis
                + mount.creep().flexureRaArcsecPerMinute());
    creepDec = Curve.ramp(mount.creep().flexureDecArcsecPerMinute());
    List<Curve> ra = new ArrayList<>(disturbances.ra);
    ra.add(gearing(mount.worm(), wormPhase, skyPerAxis));
    if (mount.worm().unsteadiness() > 0) {
      NoiseStream noise = NoiseStream.of(seed, "worm-turns", id);
      ra.add(unsteady(mount.worm(), wormPhase, skyPerAxis, run.durationMinutes() * 60, noise));
    }
    mechanicsRa = Curve.sum(ra);
    mechanicsDec = Curve.sum(disturbances.dec);
    wanderRa = new Wander(NoiseStream.of(seed, "wander-ra", id), mount.wanderRa());
    wanderDec = new Wander(NoiseStream.of(seed, "wander-dec", id), mount.wanderDec());
  }

  static double cosineOfDeclination(RunPlan run) {
    return StrictMath.cos(run.declinationDegrees() * (Math.PI / 180));
  }

  /** Worm and gears, shifted to be zero when guiding begins: the star is picked where it is. */
  private static Curve gearing(MountPlan.Worm worm, double wormPhase, double skyPerAxis) {
    List<Curve> parts = new ArrayList<>();
    double atStart = 0;
    for (MountPlan.Harmonic harmonic : worm.harmonics()) {
      double amplitude = harmonic.amplitudeArcsec() * skyPerAxis;
      double phase = harmonic.phaseRadians() + harmonic.order() * wormPhase;
      parts.add(Curve.sinusoid(amplitude, worm.periodSeconds() / harmonic.order(), phase));
      atStart += amplitude * StrictMath.sin(phase);
    }
    for (MountPlan.Gear gear : worm.gears()) {
      double amplitude = gear.amplitudeArcsec() * skyPerAxis;
      parts.add(Curve.sinusoid(amplitude, gear.periodSeconds(), gear.phaseRadians()));
      atStart += amplitude * StrictMath.sin(gear.phaseRadians());
    }
    parts.add(Curve.step(Double.NEGATIVE_INFINITY, -atStart));
    return Curve.sum(parts);
  }

  private static Curve unsteady(
      MountPlan.Worm worm, double wormPhase, double skyPerAxis, double seconds, NoiseStream noise) {
    List<Curve> parts = new ArrayList<>();
    double atTurn = 0;
    for (MountPlan.Harmonic harmonic : worm.harmonics()) {
      double amplitude = harmonic.amplitudeArcsec() * skyPerAxis;
      double phase = harmonic.phaseRadians() + harmonic.order() * wormPhase;
      parts.add(Curve.sinusoid(amplitude, worm.periodSeconds() / harmonic.order(), phase));
      atTurn += amplitude * StrictMath.sin(harmonic.phaseRadians());
    }
    return new UnsteadyTurns(
        Curve.sum(parts),
        atTurn,
        worm.periodSeconds(),
        wormPhase,
        seconds,
        worm.unsteadiness(),
        noise);
  }

  /** Goes on without looking. */
  void skip(double seconds) {
    wanderRa.skip(seconds);
    wanderDec.skip(seconds);
  }

  /** Goes on over an exposure between two times of the run. */
  Part next(double from, double to) {
    Offset creep = new Offset(creepRa.mean(from, to), creepDec.mean(from, to));
    Offset steady = path.at((from + to) / 2).plus(creep);
    Offset wander = new Offset(wanderRa.mean(to - from), wanderDec.mean(to - from));
    Offset mechanics = new Offset(mechanicsRa.mean(from, to), mechanicsDec.mean(from, to));
    return new Part(steady.plus(wander).plus(mechanics), steady, wander);
  }

  /** Mean rotation of the camera against the field over a time [deg/h]. */
  double rotationDegreesPerHour(double seconds) {
    return path.rotationDegrees(0, seconds) / seconds * 3600;
  }
}
