package io.github.roundstar.sky;

import java.util.OptionalDouble;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.apache.commons.math3.util.FastMath;

/**
 * Atmospheric refraction of visible light in dry air: R = A tan z + B tan&sup3; z with z the
 * apparent zenith distance. Meant for altitudes above 15 degrees.
 *
 * @see "Routine refco of SOFA and ERFA (IAU Standards of Fundamental Astronomy) for A and B, taken
 *     at 0.55 um and no humidity, which changes A by less than 0.1 %"
 */
public final class Refraction {
  /** Below this altitude the model is refused [deg]. */
  public static final double LOWEST_ALTITUDE_DEGREES = 5;

  private static final double WAVELENGTH_SQUARED = 0.55 * 0.55;
  private static final double ARCSEC_PER_RADIAN = FastMath.toDegrees(1) * 3600;
  private static final int ITERATIONS = 8;

  private final double pressureHectopascal;
  private final double temperatureCelsius;
  private final double linear;
  private final double cubic;

  /**
   * For one weather.
   *
   * @param pressureHectopascal at the site, not reduced to sea level [hPa]
   * @param temperatureCelsius of the air [deg C]
   */
  public Refraction(double pressureHectopascal, double temperatureCelsius) {
    double kelvin = temperatureCelsius + 273.15;
    if (!(pressureHectopascal >= 0 && kelvin > 0)) {
      throw new IllegalArgumentException(
          "no air: " + pressureHectopascal + " hPa at " + temperatureCelsius + " deg C");
    }
    this.pressureHectopascal = pressureHectopascal;
    this.temperatureCelsius = temperatureCelsius;
    double gamma =
        (77.53484e-6 + (4.39108e-7 + 3.666e-9 / WAVELENGTH_SQUARED) / WAVELENGTH_SQUARED)
            * pressureHectopascal
            / kelvin;
    double beta = 4.4474e-6 * kelvin;
    linear = gamma * (1 - beta);
    cubic = -gamma * (beta - gamma / 2);
  }

  /** Air so many times as dense, which lifts every star so many times as much. */
  public Refraction times(double factor) {
    return new Refraction(factor * pressureHectopascal, temperatureCelsius);
  }

  /**
   * How far the refracted pole stands above the true one [arcsec]; nothing can be said where the
   * pole is too low.
   */
  public OptionalDouble poleLiftArcsec(Site site) {
    double altitude = Math.abs(site.latitudeDegrees());
    return altitude < LOWEST_ALTITUDE_DEGREES
        ? OptionalDouble.empty()
        : OptionalDouble.of(arcsec(altitude));
  }

  /** Coefficient of tan z [arcsec]. */
  double linearArcsec() {
    return linear * ARCSEC_PER_RADIAN;
  }

  /** Coefficient of tan cubed z [arcsec]. */
  double cubicArcsec() {
    return cubic * ARCSEC_PER_RADIAN;
  }

  /**
   * How much a star is lifted [arcsec].
   *
   * @param altitudeDegrees true altitude, without refraction [deg]
   * @throws IllegalArgumentException below {@link #LOWEST_ALTITUDE_DEGREES}
   */
  public double arcsec(double altitudeDegrees) {
    if (!(altitudeDegrees >= LOWEST_ALTITUDE_DEGREES)) {
      throw new IllegalArgumentException(
          "altitude " + altitudeDegrees + " degrees is too low for this refraction model");
    }
    double trueDistance = FastMath.toRadians(90 - altitudeDegrees);
    double lift = 0;
    for (int i = 0; i < ITERATIONS; i++) {
      double tangent = FastMath.tan(trueDistance - lift);
      lift = tangent * (linear + cubic * tangent * tangent);
    }
    return lift * ARCSEC_PER_RADIAN;
  }

  /** Where the star appears: lifted along the vertical. */
  public StarPlace apparent(Site site, StarPlace star) {
    Vector3D toStar = site.horizontal(star);
    Vector3D level = new Vector3D(toStar.getX(), toStar.getY(), 0);
    double altitude = FastMath.atan2(toStar.getZ(), level.getNorm());
    double lifted = altitude + arcsec(FastMath.toDegrees(altitude)) / ARCSEC_PER_RADIAN;
    if (level.getNorm() == 0) {
      return star;
    }
    return site.place(
        new Vector3D(
            FastMath.cos(lifted), level.normalize(), FastMath.sin(lifted), Vector3D.PLUS_K));
  }
}
