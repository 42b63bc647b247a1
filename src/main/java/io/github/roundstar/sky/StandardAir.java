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
  private static final double EXPONENT = 5.255876;

  /** Of the Earth, as the standard takes it to fall off with height [m]. */
  private static final double RADIUS_METRES = 6_356_766;

  private StandardAir() {}

  /**
   * Pressure at a height [hPa].
   *
   * @param elevationMetres above the sea, below 11 km [m]
   * @see "ISO 2533:1975, Standard Atmosphere"
   */
  public static double hectopascal(double elevationMetres) {
    // The standard's layers are told in geopotential height, which is a little less.
    double height = RADIUS_METRES * elevationMetres / (RADIUS_METRES + elevationMetres);
    return SEA_LEVEL_HECTOPASCAL
        * FastMath.pow(1 - LAPSE_KELVIN_PER_METRE * height / SEA_LEVEL_KELVIN, EXPONENT);
  }
}
