package io.github.roundstar.simulate;

import io.github.roundstar.model.FrameState;

/** The set point over a run: when it moves, and when the star has come to rest after that. */
final class Dithering {
  private final DitherPlan plan;
  private final NoiseStream noise;
  private double nextSeconds;
  private double startedSeconds;
  private int quietFrames;
  private boolean settling;
  private Offset setPoint = Offset.ZERO;
  private Offset shift = Offset.ZERO;

  Dithering(DitherPlan plan, NoiseStream noise) {
    this.plan = plan;
    this.noise = noise;
    this.nextSeconds = plan.everyMinutes() * 60;
  }

  /** Sum of all shifts so far. */
  Offset setPoint() {
    return setPoint;
  }

  /** The shift that came last. */
  Offset shift() {
    return shift;
  }

  /** Moves the set point if it is time; a new set point waits for a star. */
  boolean begins(double seconds, boolean lost) {
    if (lost || seconds < nextSeconds) {
      return false;
    }
    shift = new Offset(draw(), draw());
    setPoint = setPoint.plus(shift);
    nextSeconds += plan.everyMinutes() * 60;
    startedSeconds = seconds;
    settling = true;
    quietFrames = 0;
    return true;
  }

  /** State of a measured frame that is not the first against its set point. */
  FrameState stateAfter(double seconds, double radiusArcsec) {
    if (!settling) {
      return FrameState.USED;
    }
    quietFrames = radiusArcsec < plan.settleArcsec() ? quietFrames + 1 : 0;
    settling =
        quietFrames < plan.settleFrames() && seconds - startedSeconds < plan.settleLimitSeconds();
    return FrameState.SETTLING;
  }

  private double draw() {
    return noise.between(-plan.sizeArcsec(), plan.sizeArcsec());
  }
}
