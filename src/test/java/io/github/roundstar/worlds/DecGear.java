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
    flank = Math.max(motor - half, Math.min(motor + half, flank));
    if (stick <= 0) {
      axis = flank;
    } else if (Math.abs(flank - axis) > stick) {
      axis = flank - Math.copySign(slipTo, flank - axis);
    }
    return axis;
  }

  double axis() {
    return axis;
  }
}
