package io.github.roundstar.worlds;

/**
 * What lies between the declination motor and the axis: play (the axis moves only while a flank is
 * pushed), then friction with a spring before it (the axis sticks until the spring is wound by
 * {@code stickArcsec}, then slips until {@code slipToArcsec} of it are left).
 */
final class DecGear {
  private final double half;
  private final double stick;
  private final double slipTo;
  private double motor;
  private double flank;
  private double axis;

  /**
   * @param playArcsec whole width of the play
   * @param start where in the play the motor stands at first, from -1 (engaged for negative moves)
   *     to 1 (engaged for positive ones)
   */
  DecGear(double playArcsec, double start, double stickArcsec, double slipToArcsec) {
    half = playArcsec / 2;
    stick = stickArcsec;
    slipTo = slipToArcsec;
    flank = -start * half;
    axis = flank;
  }

  /** Turns the motor by so many arcsec of axis; says where the axis stands then. */
  double turn(double arcsec) {
    motor += arcsec;
    flank = flankAt(motor);
    axis = axisAt(flank);
    return axis;
  }

  /** Where the axis would stand after such a turn; nothing moves. */
  double after(double arcsec) {
    return axisAt(flankAt(motor + arcsec));
  }

  private double flankAt(double motorPlace) {
    return Math.max(motorPlace - half, Math.min(motorPlace + half, flank));
  }

  private double axisAt(double flankPlace) {
    if (stick <= 0) {
      return flankPlace;
    }
    double wound = flankPlace - axis;
    return Math.abs(wound) > stick ? flankPlace - Math.copySign(slipTo, wound) : axis;
  }

  double axis() {
    return axis;
  }
}
