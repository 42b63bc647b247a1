package io.github.roundstar.sky;

import java.time.Instant;
import org.apache.commons.math3.util.FastMath;

/** Which stars are on the meridian. UT1 is taken as UTC, wrong by less than 0.004 degrees. */
public final class SiderealTime {
  private static final Instant J2000 = Instant.parse("2000-01-01T12:00:00Z");

  private SiderealTime() {}

  /**
   * Greenwich mean sidereal time [deg, 0..360).
   *
   * @see "Meeus, Astronomical Algorithms, 2nd ed., chapter 12"
   */
  public static double greenwichDegrees(Instant instant) {
    double days =
        ((instant.getEpochSecond() - J2000.getEpochSecond()) + instant.getNano() * 1e-9) / 86_400;
    double centuries = days / 36_525;
    double degrees =
        280.46061837
            + 360.98564736629 * days
            + centuries * centuries * (0.000387933 - centuries / 38_710_000);
    return degrees - 360 * FastMath.floor(degrees / 360);
  }

  /**
   * Hour angle [h, -12..12), west positive.
   *
   * @param longitudeDegrees of the site, east positive [deg]
   * @param rightAscensionHours of date; that of J2000 is wrong by about 0.02 h now [h]
   */
  public static double hourAngleHours(
      Instant instant, double longitudeDegrees, double rightAscensionHours) {
    double hours = (greenwichDegrees(instant) + longitudeDegrees) / 15 - rightAscensionHours;
    return hours - 24 * FastMath.floor((hours + 12) / 24);
  }
}
