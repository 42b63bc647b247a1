package io.github.roundstar.sky;

import org.apache.commons.math3.util.FastMath;

/** The air of the standard atmosphere, where nobody measured it. */
public final class StandardAir {
  /** Pressure at sea level [hPa]. */
  public static final double SEA_LEVEL_HECTOPASCAL = 1013.25;

  /** A clear night; the refraction changes by a third of a percent for each degree [deg C]. */
  public static final double NIGHT_CELSIUS = 10;

  private static final double SEA_LEVEL_KELVIN = 288.15;
  private static final double LAPSE_KELVIN_PER_METRE = 0.0065;
  private static final double EXPONENT = 5.2559;

  private StandardAir() {}

  /**
   * Pressure at a height [hPa].
   *
   * @param elevationMetres above the sea, below 11 km [m]
   * @see "ISO 2533:1975, Standard Atmosphere"
   */
  public static double hectopascal(double elevationMetres) {
    return SEA_LEVEL_HECTOPASCAL
        * FastMath.pow(1 - LAPSE_KELVIN_PER_METRE * elevationMetres / SEA_LEVEL_KELVIN, EXPONENT);
  }
}
