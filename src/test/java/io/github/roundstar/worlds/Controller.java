package io.github.roundstar.worlds;

/** How one axis answers what the camera measured. One object per run; it remembers. */
final class Controller {
  /** The law of the axis. */
  enum Law {
    /** Gain times the offset. */
    PROPORTIONAL,
    /** Gain times the offset behind a first-order low-pass filter. */
    LOW_PASS,
    /** Gain times the offset, and a share of the sum of all offsets. */
    INTEGRAL
  }

  /** Settings of one axis; plain fields, since a plan is made in steps. */
  static final class Settings {
    Law law = Law.PROPORTIONAL;

    /** Share of the offset that one pulse is to remove. */
    double gain;

    /** Smaller offsets are left alone [arcsec on the sky]. */
    double deadbandArcsec;

    /** Weight of the newest offset in the low-pass filter. */
    double newestShare = 1;

    /** Weight of the sum of offsets. */
    double integralGain;

    /** So many offsets in a row must ask for the other direction before it is taken; 0 = none. */
    int votes;

    double longestMs = 1e9;
    double shortestMs;

    /** 0 both directions, 1 only positive pulses, -1 only negative ones, NaN none. */
    double direction;

    Settings copy() {
      Settings copy = new Settings();
      copy.law = law;
      copy.gain = gain;
      copy.deadbandArcsec = deadbandArcsec;
      copy.newestShare = newestShare;
      copy.integralGain = integralGain;
      copy.votes = votes;
      copy.longestMs = longestMs;
      copy.shortestMs = shortestMs;
      copy.direction = direction;
      return copy;
    }
  }

  private final Settings settings;
  private final double believedSkyArcsecPerSecond;
  private double filtered = Double.NaN;
  private double sum;
  private double going;
  private int against;

  /**
   * @param believedSkyArcsecPerSecond what the controller thinks that a second of pulse moves on
   *     the sky
   */
  Controller(Settings settings, double believedSkyArcsecPerSecond) {
    this.settings = settings;
    this.believedSkyArcsecPerSecond = believedSkyArcsecPerSecond;
  }

  /** The set point moved: what was learnt about the old one is worth nothing. */
  void forget() {
    filtered = Double.NaN;
    sum = 0;
    against = 0;
  }

  /** The pulse [ms, positive = east or north] that answers this offset [arcsec]. */
  double pulseMs(double offset) {
    filtered =
        Double.isNaN(filtered) ? offset : filtered + settings.newestShare * (offset - filtered);
    sum = 0.995 * sum + offset;
    double seen = settings.law == Law.LOW_PASS ? filtered : offset;
    double wanted = settings.gain * seen;
    if (settings.law == Law.INTEGRAL) {
      wanted += settings.integralGain * sum;
    }
    if (Math.abs(seen) < settings.deadbandArcsec || Double.isNaN(settings.direction)) {
      return 0;
    }
    if (settings.votes > 0) {
      double side = Math.signum(wanted);
      if (going == 0) {
        going = side;
      }
      against = side == going ? 0 : against + 1;
      if (against >= settings.votes) {
        going = side;
        against = 0;
      }
      if (side != going) {
        return 0;
      }
    }
    if (settings.direction * wanted < 0) {
      return 0;
    }
    double pulse = 1000 * wanted / believedSkyArcsecPerSecond;
    if (Math.abs(pulse) < settings.shortestMs) {
      return 0;
    }
    return Math.max(-settings.longestMs, Math.min(settings.longestMs, pulse));
  }
}
