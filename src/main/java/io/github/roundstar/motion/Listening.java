package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import java.util.Arrays;

/** In which frames the loop was at work: not while idle, nor in a long stretch without a pulse. */
final class Listening {
  /** Without a pulse in either axis for this long, the mount was left to itself [s]. */
  static final double SILENCE_SECONDS = 600;

  private Listening() {}

  /** One flag per frame. */
  static boolean[] of(Frames frames) {
    boolean[] listening = new boolean[frames.size()];
    Arrays.fill(listening, true);
    int silentFrom = 0;
    for (int i = 0; i <= frames.size(); i++) {
      boolean pulse =
          i < frames.size() && (frames.raPulseMillis(i) != 0 || frames.decPulseMillis(i) != 0);
      if (i < frames.size() && frames.state(i) == FrameState.IDLE) {
        listening[i] = false;
      }
      if (i == frames.size() || pulse) {
        if (i > silentFrom
            && frames.timeSeconds(i - 1) - frames.timeSeconds(silentFrom) >= SILENCE_SECONDS) {
          Arrays.fill(listening, silentFrom, i, false);
        }
        silentFrom = i + 1;
      }
    }
    return listening;
  }
}
