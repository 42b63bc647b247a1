package io.github.roundstar.motion;

import io.github.roundstar.model.Frames;

/**
 * The pulses of one axis of a run as the mount carries them out; immutable.
 *
 * <p>A pulse starts when its frame's exposure ends. Where the gears have play, a pulse against the
 * flank that they rest on first takes up the play and moves nothing: it then starts later and is
 * shorter by what was lost.
 */
final class PulseTrain {
  private final double[] seconds;
  private final double[] delaySeconds;

  private PulseTrain(double[] seconds, double[] delaySeconds) {
    this.seconds = seconds;
    this.delaySeconds = delaySeconds;
  }

  /** The pulses as sent. */
  static PulseTrain sent(Frames frames, Axis axis) {
    double[] seconds = new double[frames.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = axis.pulseMillis(frames, i) / 1000;
    }
    return new PulseTrain(seconds, new double[seconds.length]);
  }

  /**
   * The pulses behind a play: the play operator on the motor's side.
   *
   * @param playSeconds pulse time that a full reversal loses [s, &ge; 0]
   * @param slack share of the play that a first push east or north would lose, 0 to 1
   * @see "Krasnosel'skii &amp; Pokrovskii, Systems with Hysteresis (1989), section 2"
   */
  PulseTrain behindPlay(double playSeconds, double slack) {
    double[] moved = new double[seconds.length];
    double[] delay = new double[seconds.length];
    GearPlay play = new GearPlay(playSeconds, slack);
    for (int i = 0; i < seconds.length; i++) {
      delay[i] = play.lost(seconds[i]);
      moved[i] = Math.copySign(Math.abs(seconds[i]) - delay[i], seconds[i]);
    }
    return new PulseTrain(moved, delay);
  }

  /** Signed length of the pulse after frame {@code i} [s]. */
  double seconds(int i) {
    return seconds[i];
  }

  /** How long after the exposure's end it starts to act [s]. */
  double delaySeconds(int i) {
    return delaySeconds[i];
  }

  /** Whether there is any pulse. */
  boolean pushes() {
    for (double length : seconds) {
      if (length != 0) {
        return true;
      }
    }
    return false;
  }
}
