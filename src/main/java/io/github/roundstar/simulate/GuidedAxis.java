package io.github.roundstar.simulate;

/** One axis under guiding: the loop's rule, the drive, and where the tube is during an exposure. */
final class GuidedAxis {
  private final PulseRule rule;
  private final AxisDrive drive;
  private final double skyPerMotor;
  private final double forwardArcsecPerSecond;
  private final double backwardArcsecPerSecond;
  private double tubeBeforeArcsec;
  private double pulseStartSeconds;
  private Move move = Move.NONE;

  /**
   * An axis at rest.
   *
   * @param skyPerMotor sky arcsec per arcsec of the motor's frame, with sign
   * @param forwardArcsecPerSecond true speed of the motor the positive way, &gt; 0
   * @param backwardArcsecPerSecond the same the negative way, &gt; 0
   */
  GuidedAxis(
      PulseRule rule,
      AxisDrive drive,
      double skyPerMotor,
      double forwardArcsecPerSecond,
      double backwardArcsecPerSecond) {
    this.rule = rule;
    this.drive = drive;
    this.skyPerMotor = skyPerMotor;
    this.forwardArcsecPerSecond = forwardArcsecPerSecond;
    this.backwardArcsecPerSecond = backwardArcsecPerSecond;
  }

  /** Where corrections have brought the mount on the sky, mean over a time [arcsec]. */
  double meanCorrectionArcsec(double from, double to) {
    double moved = move.meanArcsec(from - pulseStartSeconds, to - pulseStartSeconds);
    return skyPerMotor * (tubeBeforeArcsec + moved);
  }

  /** How far the motor is ahead of the tube, in the motor's frame [arcsec]. */
  double lagArcsec() {
    return drive.motorArcsec() - drive.tubeArcsec();
  }

  /**
   * Answers a measured offset with a pulse of whole milliseconds that starts at {@code now}.
   *
   * @param offsetArcsec NaN where the star was lost
   * @return the pulse as logged [ms]
   */
  double answer(double offsetArcsec, double now) {
    double millis = Math.rint(rule.next(offsetArcsec));
    double motorMillis = millis * Math.signum(skyPerMotor);
    double speed = motorMillis > 0 ? forwardArcsecPerSecond : -backwardArcsecPerSecond;
    tubeBeforeArcsec = drive.tubeArcsec();
    pulseStartSeconds = now;
    move = drive.push(speed, Math.abs(motorMillis) / 1000);
    return millis + 0.0;
  }
}
