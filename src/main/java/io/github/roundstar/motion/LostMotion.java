package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;

/**
 * What an axis loses of its pushes, and where it stood at first.
 *
 * @param kind play of the gears, or sticking
 * @param arcsec width of the play, or threshold of sticking [arcsec, &ge; 0]
 * @param start play: share that a first push east or north would lose, 0 to 1; sticking: share of
 *     the threshold that the motor is ahead by, east or north positive, -1 to 1
 * @param unlikeness how much more than the mean of both directions a push east or north moves the
 *     motor, as a share; one west or south so much less
 */
record LostMotion(Kind kind, double arcsec, double start, double unlikeness) {
  /** Nothing is lost. */
  static final LostMotion NONE = play(0, 0, 0);

  /** How motion is lost. */
  enum Kind {
    PLAY,
    STICKING
  }

  static LostMotion play(double arcsec, double slack, double unlikeness) {
    return new LostMotion(Kind.PLAY, arcsec, slack, unlikeness);
  }

  static LostMotion sticking(double arcsec, double withheld, double unlikeness) {
    return new LostMotion(Kind.STICKING, arcsec, withheld, unlikeness);
  }

  /**
   * A threshold as pulses of the measured strength have it.
   *
   * @param declaredArcsec as those of the declared strength have it
   * @param strength measured over declared
   * @return its interval holds the strength's
   */
  static Estimate measured(Estimate declaredArcsec, Estimate strength) {
    double value = declaredArcsec.value() * strength.value();
    double ofStrength = declaredArcsec.value() * (strength.hi95() - strength.value());
    double below = (declaredArcsec.value() - declaredArcsec.lo95()) * strength.value();
    double above = (declaredArcsec.hi95() - declaredArcsec.value()) * strength.value();
    return new Estimate(
        value,
        Math.max(0, value - Math.hypot(below, ofStrength)),
        value + Math.hypot(above, ofStrength));
  }

  /** The same where pushes are so many times as strong. */
  LostMotion times(double factor) {
    return new LostMotion(kind, factor * arcsec, start, unlikeness);
  }

  /** The same where nobody knows how it stood at first, for pushes whose strength is known. */
  LostMotion anew() {
    return kind == Kind.PLAY ? play(arcsec, 0.5, 0) : sticking(arcsec, 0, 0);
  }

  /** The axis before the first push. */
  Drive begin() {
    return switch (kind) {
      case PLAY -> new GearPlay(arcsec, start, unlikeness);
      case STICKING -> new StickyAxis(arcsec, start, unlikeness);
    };
  }
}
