package io.github.roundstar.sky;

/** How fast the sky turns, and what that makes of a gear. */
public final class SiderealRate {
  /**
   * Mean sidereal day [s]: difference of Greenwich mean sidereal time (IAU 2006) over one day, as
   * ERFA's {@code gmst06} gives it.
   */
  public static final double SIDEREAL_DAY_SECONDS = 86164.0905;

  /**
   * Rotation of the Earth against the stars [arcsec/s], 15.041067: the Earth rotation angle grows
   * by 1.00273781191135448 turns per UT1 day (Capitaine, Guinot &amp; McCarthy 2000, A&amp;A 355,
   * 398; IERS Conventions 2010, TN 36). The rate against the moving equinox differs by 1e-7.
   */
  public static final double ARCSEC_PER_SECOND = 1_296_000 * 1.00273781191135448 / 86_400;

  private SiderealRate() {}

  /**
   * Period of a worm that turns a wheel once per sidereal day.
   *
   * @param teeth teeth of the worm wheel, &gt; 0
   * @return one turn of the worm [s]
   */
  public static double wormPeriodSeconds(double teeth) {
    if (!(teeth > 0 && Double.isFinite(teeth))) {
      throw new IllegalArgumentException("a worm wheel with " + teeth + " teeth");
    }
    return SIDEREAL_DAY_SECONDS / teeth;
  }
}
