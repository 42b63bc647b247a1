package io.github.roundstar.motion;

import io.github.roundstar.model.Frames;

/**
 * The pulses of one axis of a run as the mount carries them out; immutable.
 *
 * <p>A pulse starts when its frame's exposure ends. Where motion is lost between motor and tube, it
 * starts later and is shorter by what was lost. The tube of an axis that sticks leaps as it starts.
 */
final class PulseTrain {
  private final double[] seconds;
  private final double[] delaySeconds;
  private final double[] leapSeconds;

  private PulseTrain(double[] seconds, double[] delaySeconds, double[] leapSeconds) {
    this.seconds = seconds;
    this.delaySeconds = delaySeconds;
    this.leapSeconds = leapSeconds;
  }

  /** The pulses as sent. */
  static PulseTrain sent(Frames frames, Axis axis) {
    double[] seconds = new double[frames.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = axis.pulseMillis(frames, i) / 1000;
    }
    return new PulseTrain(seconds, new double[seconds.length], new double[seconds.length]);
  }

  /** The same pulses the other way round. */
  PulseTrain reversed() {
    double[] other = new double[seconds.length];
    for (int i = 0; i < other.length; i++) {
      other[i] = -seconds[i];
    }
    return new PulseTrain(other, delaySeconds, leapSeconds);
  }

  /**
   * The pulses as the tube has them.
   *
   * @param drive what they pass, in seconds of pulse
   */
  PulseTrain behind(Drive drive) {
    double[] moved = new double[seconds.length];
    double[] delay = new double[seconds.length];
    double[] leap = new double[seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      double push = seconds[i];
      if (push != 0) {
        delay[i] = drive.lost(push);
        moved[i] = push > 0 ? push - delay[i] : push + delay[i];
        leap[i] = moved[i] == 0 ? 0 : drive.leap(push);
      }
    }
    return new PulseTrain(moved, delay, leap);
  }

  /** Signed length of the pulse after frame {@code i} [s]. */
  double seconds(int i) {
    return seconds[i];
  }

  /** How long after the exposure's end it starts to act [s]. */
  double delaySeconds(int i) {
    return delaySeconds[i];
  }

  /** What the tube leaps by as it starts to act, in the pulse's direction [s, &ge; 0]. */
  double leapSeconds(int i) {
    return leapSeconds[i];
  }

  /** Whether there is any pulse. */
  boolean pushes() {
    return count(1) + count(-1) > 0;
  }

  /** Number of pulses east or north (1), or west or south (-1). */
  int count(int direction) {
    int count = 0;
    for (double length : seconds) {
      count += direction * length > 0 ? 1 : 0;
    }
    return count;
  }
}
