package io.github.roundstar.motion;

import io.github.roundstar.model.Frames;

/**
 * How much pulse time had acted by the middle of each exposure, exposure-averaged.
 *
 * <p>A frame's pulse starts when its exposure ends and lasts as long as it says. What runs into a
 * later exposure moves the star while it is being measured: the centroid then shows the average
 * over that exposure.
 */
final class ExecutedPulses {
  private ExecutedPulses() {}

  /**
   * Pulse time of one direction behind each frame.
   *
   * @param frames the run
   * @param pulses its pulses
   * @param direction 1 for pulses east or north, -1 for west or south
   * @param exposureSeconds guide exposure; 0 when unknown: a pulse then starts at its frame's time
   *     [s]
   * @return per frame the summed length of the pulses of that direction sent after earlier frames,
   *     as far as they had acted, leaps included [s, not negative]
   */
  static double[] seconds(Frames frames, PulseTrain pulses, int direction, double exposureSeconds) {
    double[] acted = new double[frames.size()];
    OpenPulses open = new OpenPulses(acted.length);
    double before = Double.NEGATIVE_INFINITY;
    double ended = 0;
    for (int k = 0; k < acted.length; k++) {
      double middle = frames.timeSeconds(k);
      // No longer than the cadence that a log may have changed to.
      double exposure = Math.min(exposureSeconds, middle - before);
      if (k > 0) {
        double length = Math.max(0, direction * pulses.seconds(k - 1));
        open.send(ended + pulses.delaySeconds(k - 1), length, pulses.leapSeconds(k - 1));
      }
      acted[k] = open.acted(middle - exposure / 2, exposure);
      before = middle;
      ended = middle + exposure / 2;
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
