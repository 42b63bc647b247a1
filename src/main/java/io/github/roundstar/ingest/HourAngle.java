package io.github.roundstar.ingest;

import io.github.roundstar.sky.SiderealRate;

/** How the hour angle of a star grows. */
final class HourAngle {
  private HourAngle() {}

  /** The hour angle some seconds later [h, -12 up to 12]. */
  static double later(double hours, double seconds) {
    double turned = hours + 12 + seconds * 24 / SiderealRate.SIDEREAL_DAY_SECONDS;
    return turned - 24 * Math.floor(turned / 24) - 12;
  }
}
