package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;

/**
 * Where the level of a run is lost, so that what lies before and after may differ by any step: a
 * dither whose shift the log does not give, a star that was lost and picked up again, a long gap.
 */
final class Pieces {
  /** Longest gap across which the level is trusted [s]. */
  static final double LONGEST_GAP_SECONDS = 30;

  /**
   * A log with slow frames has gaps only when frames are missing: the gap is at least this many
   * cadences.
   */
  static final double LONGEST_GAP_CADENCES = 3;

  /**
   * A star missed in one or two frames is the same star at the same place; after more it has been
   * picked up anew.
   */
  static final int LOST_FRAMES = 3;

  private Pieces() {}

  /**
   * For each of the given frames, whether an unknown step lies before it.
   *
   * @param frames the run
   * @param measured indices of the measured frames, ascending
   * @return one flag per measured frame; the first is always set
   */
  static boolean[] starts(Frames frames, int[] measured) {
    double longestGap =
        Math.max(
            LONGEST_GAP_SECONDS, LONGEST_GAP_CADENCES * Cadence.medianSeconds(frames).orElse(0));
    boolean[] starts = new boolean[measured.length];
    for (int m = 0; m < measured.length; m++) {
      starts[m] =
          m == 0
              || frames.timeSeconds(measured[m]) - frames.timeSeconds(measured[m - 1]) > longestGap
              || stepBetween(frames, measured[m - 1], measured[m]);
    }
    return starts;
  }

  /**
   * The same for every frame of the run. A frame without a measurement belongs to the piece before
   * it, unless a dither came between.
   */
  static boolean[] everyFrame(Frames frames, int[] measured) {
    boolean[] ofMeasured = starts(frames, measured);
    boolean[] starts = new boolean[frames.size()];
    for (int m = 1; m < measured.length; m++) {
      if (ofMeasured[m]) {
        int start = measured[m];
        for (int i = measured[m] - 1; i > measured[m - 1]; i--) {
          start = frames.ditherStart(i) ? i : start;
        }
        starts[start] = true;
      }
    }
    return starts;
  }

  private static boolean stepBetween(Frames frames, int before, int after) {
    int lost = 0;
    for (int i = before + 1; i <= after; i++) {
      boolean shiftKnown =
          Double.isFinite(frames.ditherRaArcsec(i)) && Double.isFinite(frames.ditherDecArcsec(i));
      if (frames.ditherStart(i) && !shiftKnown) {
        return true;
      }
      if (frames.state(i) == FrameState.LOST) {
        lost++;
      }
    }
    return lost >= LOST_FRAMES;
  }
}
