package io.github.roundstar.motion;

/**
 * How much pulse time had acted by the middle of each exposure, exposure-averaged.
 *
 * <p>A frame's pulse starts when its exposure ends and lasts as long as it says. What runs into a
 * later exposure moves the star while it is being measured: the centroid then shows the average
 * over that exposure.
 */
final class ExecutedPulses {
  /** Pulses that are looked at one by one for each frame. */
  private static final int MOST_PENDING = 8;

  private ExecutedPulses() {}

  /**
   * Pulse time of one direction behind each frame.
   *
   * @param times when the frames were exposed
   * @param pulses the run's pulses
   * @param delay how long they wait after the exposure that asked for them [s]
   * @param direction 1 for pulses east or north, -1 for west or south
   * @return per frame the summed length of the pulses of that direction sent after earlier frames,
   *     as far as they had acted, leaps included [s, not negative]
   */
  static double[] seconds(ExposureTimes times, PulseTrain pulses, double delay, int direction) {
    double[] acted = new double[times.size()];
    OpenPulses open = new OpenPulses(pulses.count(direction));
    for (int k = 1; k < acted.length; k++) {
      double length = direction * pulses.seconds(k - 1);
      if (length > 0) {
        double begin = times.endSeconds(k - 1) + delay + pulses.delaySeconds(k - 1);
        open.send(begin, length, pulses.leapSeconds(k - 1));
      }
      acted[k] = open.acted(times.beginSeconds(k), times.lengthSeconds(k));
    }
    return acted;
  }

  /**
   * Pulse time of both directions behind each frame, on balance.
   *
   * @param delay how long they wait after the exposure that asked for them [s]
   * @param oneWay weight of pulses east or north, otherWay of those west or south
   * @return as in {@link #seconds}, those of the other way taken off
   */
  static double[] balance(
      ExposureTimes times, PulseTrain pulses, double delay, double oneWay, double otherWay) {
    double[] acted = new double[times.size()];
    int first = 0;
    double finished = 0;
    for (int k = 1; k < acted.length; k++) {
      if (k - first > MOST_PENDING) {
        return balanceOfLong(times, pulses, delay, oneWay, otherWay);
      }
      double begin = times.beginSeconds(k);
      double partly = 0;
      boolean over = true;
      for (int i = first; i < k; i++) {
        double length = pulses.seconds(i);
        double weight = length > 0 ? oneWay : -otherWay;
        double push = Math.abs(length);
        double sent = times.endSeconds(i) + delay + pulses.delaySeconds(i);
        boolean acting = push > 0 && begin < sent + push;
        if (over && !acting) {
          finished += weight * (push + (push > 0 ? pulses.leapSeconds(i) : 0));
          first = i + 1;
          continue;
        }
        over = false;
        if (push > 0) {
          partly +=
              weight
                  * (push * share(sent, push, begin, times.lengthSeconds(k))
                      + pulses.leapSeconds(i) * step(sent, begin, times.lengthSeconds(k)));
        }
      }
      acted[k] = finished + partly;
    }
    return acted;
  }

  /** The same where pulses outlast many frames. */
  private static double[] balanceOfLong(
      ExposureTimes times, PulseTrain pulses, double delay, double oneWay, double otherWay) {
    double[] acted = seconds(times, pulses, delay, 1);
    double[] other = seconds(times, pulses, delay, -1);
    for (int k = 0; k < acted.length; k++) {
      acted[k] = oneWay * acted[k] - otherWay * other[k];
    }
    return acted;
  }

  /**
   * Mean over an exposure of the share of a pulse that has acted.
   *
   * @param sent when the pulse begins to act [s]
   * @param length how long it acts [s, &ge; 0]
   * @param begin of the exposure [s]
   * @param exposure length of the exposure; 0 for an instant [s]
   */
  static double share(double sent, double length, double begin, double exposure) {
    if (begin >= sent + length) {
      return 1;
    }
    if (exposure == 0) {
      return Math.max(0, (begin - sent) / length);
    }
    return (ramp(begin + exposure - sent, length) - ramp(begin - sent, length)) / exposure;
  }

  /** Mean over an exposure, as in {@link #share}, of a step from 0 to 1. */
  static double step(double at, double begin, double exposure) {
    if (exposure == 0) {
      return begin >= at ? 1 : 0;
    }
    return Math.max(0, Math.min(1, (begin + exposure - at) / exposure));
  }

  /** Integral from minus infinity to {@code t} of a ramp from 0 at 0 to 1 at {@code length}. */
  private static double ramp(double t, double length) {
    if (t <= 0) {
      return 0;
    }
    return t < length ? t * t / (2 * length) : t - length / 2;
  }
}
