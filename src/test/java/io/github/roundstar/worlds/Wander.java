package io.github.roundstar.worlds;

/** How the mount's pointing wanders when nothing else moves it. */
public enum Wander {
  /** Random walk; strength in arcsec per square root of a second. */
  WALK,
  /**
   * Bounded: forgets after some time (Ornstein-Uhlenbeck); strength = standard deviation, arcsec.
   */
  BOUNDED,
  /**
   * Flicker: spectrum 1/f between 3 s and 6561 s; strength = standard deviation of each of the
   * eight forgetful motions it is made of, arcsec.
   */
  FLICKER
}
