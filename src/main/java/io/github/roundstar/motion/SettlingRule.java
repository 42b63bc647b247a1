package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import java.util.ArrayList;
import java.util.List;

/**
 * When a star counts as settled after a dither, as far as a log shows its program's rule: the
 * radial offset stayed below some limit for three frames, or a minute was over.
 *
 * @param limitArcsec the limit, between the largest offset of the last three settling frames and
 *     the least of the frames before those; infinite when no dither shows it
 */
record SettlingRule(double limitArcsec) {
  private static final int CALM_FRAMES = 3;
  private static final double LONGEST_SECONDS = 60;

  static SettlingRule of(Frames frames) {
    List<Double> calm = new ArrayList<>();
    List<Double> before = new ArrayList<>();
    for (int end = 1; end < frames.size(); end++) {
      boolean ends =
          frames.state(end) == FrameState.USED && frames.state(end - 1) == FrameState.SETTLING;
      for (int back = 1; ends && back <= CALM_FRAMES + 1 && settling(frames, end - back); back++) {
        int i = end - back;
        double radius = Math.hypot(frames.raArcsec(i), frames.decArcsec(i));
        (back <= CALM_FRAMES ? calm : before).add(radius);
      }
    }
    double above = before.stream().mapToDouble(r -> r).min().orElse(Double.POSITIVE_INFINITY);
    double below = calm.stream().mapToDouble(r -> r).max().orElse(Double.POSITIVE_INFINITY);
    return new SettlingRule(Double.isFinite(above) ? (below + above) / 2 : below);
  }

  private static boolean settling(Frames frames, int i) {
    return i >= 0 && frames.measured(i) && frames.state(i) == FrameState.SETTLING;
  }

  /** The rule at work. */
  final class Watch {
    private boolean settling;
    private int calm;
    private double since;

    /** Whether the star has settled, with the next frame. */
    boolean settled(boolean moved, double seconds, double radiusArcsec) {
      if (moved) {
        settling = true;
        calm = 0;
        since = seconds;
        return false;
      }
      if (!settling) {
        return true;
      }
      calm = radiusArcsec < limitArcsec ? calm + 1 : 0;
      settling = calm < CALM_FRAMES && seconds - since < LONGEST_SECONDS;
      return false;
    }
  }
}
