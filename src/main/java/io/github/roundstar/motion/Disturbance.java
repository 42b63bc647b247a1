package io.github.roundstar.motion;

import java.util.OptionalDouble;

/**
 * Something that happened to the star in a run and that the log itself does not tell.
 *
 * @param kind what it was
 * @param startSeconds first frame that shows it, seconds since the run's start
 * @param endSeconds last frame that shows it; of a lasting shift the first frame after it [s]
 * @param sizeArcsec how far the star went, on the sky; nothing where that has no meaning
 * @param lightLost share of the star's light that a cloud took at most, 0 to 1; nothing but for
 *     clouds
 */
public record Disturbance(
    Kind kind,
    double startSeconds,
    double endSeconds,
    OptionalDouble sizeArcsec,
    OptionalDouble lightLost) {

  /** What happened. */
  public enum Kind {
    /** The star went away and came back by itself: wind, as a rule. */
    GUST("gust"),
    /** It went over to another place from one frame to the next, and the mount has to follow. */
    KNOCK("knock"),
    /** The same, but it took several frames: a cable that pulls, a mirror that slips. */
    LASTING_SHIFT("lasting-shift"),
    /** A sudden shift with another brightness ever after: the camera follows another star. */
    STAR_SWITCH("star-switch"),
    /** The star lost much of its light for a while. */
    CLOUD("cloud"),
    /** No pulse moved it: a fault of the camera's chip, not a star. */
    STUCK_STAR("stuck-star");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** What the result calls it. */
    public String word() {
      return word;
    }
  }

  static Disturbance ofSize(Kind kind, double start, double end, double sizeArcsec) {
    return new Disturbance(kind, start, end, OptionalDouble.of(sizeArcsec), OptionalDouble.empty());
  }
}
