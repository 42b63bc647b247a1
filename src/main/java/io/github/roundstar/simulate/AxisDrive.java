package io.github.roundstar.simulate;

/**
 * One axis from motor to tube, in the motor's frame: first the play of the gears, then stiction,
 * which holds the tube until the gears have run ahead by its threshold and then lets it catch up.
 */
final class AxisDrive {
  private final Play play;
  private final double stictionArcsec;
  private double motorArcsec;
  private double tubeArcsec;

  /**
   * An axis with the tube at zero.
   *
   * @param backlashArcsec whole play
   * @param start where the tube stands in the play, -1..1; at 1 a positive move pushes at once
   */
  AxisDrive(double backlashArcsec, double stictionArcsec, double start) {
    this.play = new Play(backlashArcsec, 0);
    this.stictionArcsec = stictionArcsec;
    this.motorArcsec = start * backlashArcsec / 2;
  }

  double motorArcsec() {
    return motorArcsec;
  }

  double tubeArcsec() {
    return tubeArcsec;
  }

  /**
   * Runs the motor.
   *
   * @param arcsecPerSecond speed of the motor, with sign
   * @param seconds how long, at least 0
   * @return what the tube does meanwhile
   */
  Move push(double arcsecPerSecond, double seconds) {
    if (arcsecPerSecond == 0 || seconds == 0) {
      return Move.NONE;
    }
    double speed = Math.abs(arcsecPerSecond);
    double direction = Math.signum(arcsecPerSecond);
    double ahead = direction * (play.driven() - tubeArcsec);
    double wait = play.gap(motorArcsec, direction > 0) + stictionArcsec - ahead;
    motorArcsec += arcsecPerSecond * seconds;
    double driven = play.follow(motorArcsec);
    if (wait >= speed * seconds) {
      return Move.NONE;
    }
    tubeArcsec = driven;
    return new Move(wait / speed, direction * stictionArcsec, arcsecPerSecond, seconds);
  }
}
