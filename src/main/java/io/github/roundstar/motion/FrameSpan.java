package io.github.roundstar.motion;

/**
 * Frames of a run that belong together.
 *
 * @param from first frame
 * @param to frame after the last
 */
public record FrameSpan(int from, int to) {
  /** Checks. */
  public FrameSpan {
    if (from < 0 || to <= from) {
      throw new IllegalArgumentException("frames " + from + " to " + to);
    }
  }
}
