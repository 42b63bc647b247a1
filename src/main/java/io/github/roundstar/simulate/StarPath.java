package io.github.roundstar.simulate;

import io.github.roundstar.sky.PolarAxis;
import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.SiderealRate;
import io.github.roundstar.sky.Site;
import io.github.roundstar.sky.StarPlace;
import java.util.Optional;

/**
 * Where a star goes in the field of a mount that turns at exactly the sidereal rate about an axis
 * beside the pole: exact rotation of vectors, refraction included.
 */
final class StarPath {
  private static final double FULL_TURN_ARCSEC = 1_296_000;

  private final Site site;
  private final PolarAxis axis;
  private final Optional<Refraction> refraction;
  private final RunPlan run;
  private final StarPlace first;

  StarPath(Scenario scenario, RunPlan run) {
    this.site = new Site(scenario.evening().latitudeDegrees());
    this.axis =
        new PolarAxis(
            site, scenario.polarAxis().azimuthArcmin(), scenario.polarAxis().altitudeArcmin());
    this.refraction =
        scenario
            .air()
            .map(air -> new Refraction(air.pressureHectopascal(), air.temperatureCelsius()));
    this.run = run;
    this.first = seen(0);
  }

  /** Motion east and north since the run's first frame, on the sky [arcsec]. */
  Offset at(double seconds) {
    StarPlace now = seen(seconds);
    double turned = now.hourAngleDegrees() - first.hourAngleDegrees();
    double gain = turned * 3600 - seconds * SiderealRate.ARCSEC_PER_SECOND;
    gain -= FULL_TURN_ARCSEC * Math.rint(gain / FULL_TURN_ARCSEC);
    return new Offset(
        -gain * StrictMath.cos(now.declinationDegrees() * (Math.PI / 180)),
        (now.declinationDegrees() - first.declinationDegrees()) * 3600);
  }

  /** Rotation of the camera against the field between two times, north through east [deg]. */
  double rotationDegrees(double from, double to) {
    double turned =
        axis.northPositionAngleDegrees(run.star(to))
            - axis.northPositionAngleDegrees(run.star(from));
    return turned - 360 * Math.rint(turned / 360);
  }

  private StarPlace seen(double seconds) {
    StarPlace star = run.star(seconds);
    return axis.fromMount(refraction.map(air -> air.apparent(site, star)).orElse(star));
  }
}
