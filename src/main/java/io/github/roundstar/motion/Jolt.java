package io.github.roundstar.motion;

/**
 * A movement of one axis too sudden for the run's wander and noise.
 *
 * @param shape whether it stayed
 * @param first first sample of the motion that it touched
 * @param last last sample that it touched; of a lasting shift the first one at the new level
 * @param sizeArcsec how far the motion went, of a passing shift at its farthest, with its sign, in
 *     the unit of the motion
 */
public record Jolt(Shape shape, int first, int last, double sizeArcsec) {
  /** What became of the shift. */
  public enum Shape {
    /** It went away again. */
    PASSING,
    /** It stayed. */
    LASTING
  }

  /** Number of samples from the first to the last. */
  int samples() {
    return last - first + 1;
  }

  Jolt withSize(double arcsec) {
    return new Jolt(shape, first, last, arcsec);
  }

  /** Whether the two touch a sample together, or come within {@code reach} samples. */
  boolean near(Jolt other, int reach) {
    return first - reach <= other.last && other.first - reach <= last;
  }
}
