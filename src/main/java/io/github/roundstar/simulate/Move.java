package io.github.roundstar.simulate;

/**
 * What the tube does during one pulse: rest, then perhaps a jump, then a steady move until the
 * pulse ends. Times count from the pulse's start.
 *
 * @param releaseSeconds when the tube begins to move [s]
 * @param jumpArcsec its jump at that moment [arcsec]
 * @param arcsecPerSecond its speed from then on
 * @param endSeconds end of the pulse [s]
 */
record Move(double releaseSeconds, double jumpArcsec, double arcsecPerSecond, double endSeconds) {
  /** The tube rests. */
  static final Move NONE = new Move(0, 0, 0, 0);

  /** Displacement after the pulse [arcsec]. */
  double totalArcsec() {
    return jumpArcsec + arcsecPerSecond * (endSeconds - releaseSeconds);
  }

  /** Mean displacement from one time to another, exact [arcsec]. */
  double meanArcsec(double from, double to) {
    return (integral(to) - integral(from)) / (to - from);
  }

  private double integral(double until) {
    double moving = Math.max(0, Math.min(until, endSeconds) - releaseSeconds);
    double resting = Math.max(0, until - endSeconds);
    return jumpArcsec * (moving + resting)
        + arcsecPerSecond * moving * (moving / 2)
        + arcsecPerSecond * (endSeconds - releaseSeconds) * resting;
  }
}
