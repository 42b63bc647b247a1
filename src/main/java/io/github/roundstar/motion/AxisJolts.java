package io.github.roundstar.motion;

import java.util.List;

/**
 * Jolts of one axis.
 *
 * @param axis right ascension or declination
 * @param cosine from the unit of the motion to the sky
 * @param jolts what stood out
 */
record AxisJolts(Axis axis, double cosine, List<Jolt> jolts) {
  static AxisJolts of(Axis axis, AxisMotion motion) {
    return new AxisJolts(axis, motion.run().cosine(), motion.jolts().jolts());
  }
}
