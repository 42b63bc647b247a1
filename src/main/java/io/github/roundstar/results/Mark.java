package io.github.roundstar.results;

/**
 * Something on the night's timeline.
 *
 * @param kind what it is
 * @param startSeconds seconds since the night's first frame
 * @param endSeconds the same as the start for a moment
 * @param text a few words; empty when the kind says it all
 */
public record Mark(Kind kind, double startSeconds, double endSeconds, String text) {

  /** What a mark stands for. */
  public enum Kind {
    DITHER,
    SETTLING,
    LOST,
    IDLE,
    FLIP,
    JOLT,
    CLOUD,
    NOTE
  }
}
