package io.github.roundstar.motion;

import io.github.roundstar.sky.PolarAxis;
import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.Site;
import io.github.roundstar.sky.TrackedStar;
import java.util.Optional;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * Where a polar axis in error, and the air, take the star of one run: exact rotation at nodes, a
 * cubic spline between them. The axis is given on the sky, so that both errors count alike.
 */
final class PolarPath {
  /**
   * The sky turns by half a degree between nodes; the spline is then good to a hundredth of an
   * arcsecond down to an altitude of 18 degrees, where refraction bends the path most.
   */
  private static final double NODE_SECONDS = 120;

  private static final int FEWEST_NODES = 5;

  private final Site site;
  private final Refraction air;
  private final PointedRun run;
  private final double[] seconds;

  PolarPath(Site site, Refraction air, PointedRun run) {
    this.site = site;
    this.air = air;
    this.run = run;
    this.seconds = run.background().run().motion().seconds();
  }

  /**
   * Motion north at the run's samples since its first [arcsec].
   *
   * @param eastArcmin error of the elevated end of the axis to the east, on the sky [arcmin]
   * @param highArcmin above the true pole [arcmin]
   * @param lift refraction, times that of the air given
   */
  double[] northArcsec(double eastArcmin, double highArcmin, double lift) {
    TrackedStar star = star(eastArcmin, highArcmin, lift);
    double span = run.lastSeconds() - run.firstSeconds();
    int nodes = Math.max(FEWEST_NODES, 1 + (int) Math.ceil(span / NODE_SECONDS));
    double[] x = new double[nodes];
    double[] y = new double[nodes];
    for (int i = 0; i < nodes; i++) {
      // span * i / (nodes - 1) may fall a rounding error short of the last sample.
      x[i] = i == nodes - 1 ? span : span * i / (nodes - 1);
      y[i] = star.northArcsec(x[i]);
    }
    PolynomialSplineFunction path = new SplineInterpolator().interpolate(x, y);
    double[] north = new double[seconds.length];
    for (int i = 0; i < north.length; i++) {
      north[i] = path.value(Math.min(span, seconds[i] - seconds[0]));
    }
    return north;
  }

  /** Mean drift north [arcsec/min]. */
  double northPerMinute(double eastArcmin, double highArcmin, double lift) {
    double span = run.lastSeconds() - run.firstSeconds();
    return 60 * star(eastArcmin, highArcmin, lift).northArcsec(span) / span;
  }

  /** Mean drift east on the sky [arcsec/min]. */
  double eastPerMinute(double eastArcmin, double highArcmin, double lift) {
    double span = run.lastSeconds() - run.firstSeconds();
    return 60 * star(eastArcmin, highArcmin, lift).eastArcsec(span) / span;
  }

  private TrackedStar star(double eastArcmin, double highArcmin, double lift) {
    double azimuth = eastArcmin / Math.cos(Math.toRadians(site.latitudeDegrees()));
    return new TrackedStar(
        site,
        new PolarAxis(site, azimuth, highArcmin),
        Optional.of(air.times(Math.max(0, lift))),
        run.atZero().later(run.firstSeconds()));
  }
}
