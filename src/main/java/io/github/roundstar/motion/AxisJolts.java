package io.github.roundstar.motion;

import java.util.List;
import java.util.Optional;

/**
 * Jolts of one axis.
 *
 * @param axis right ascension or declination
 * @param cosine from the unit of the motion to the sky
 * @param jolts what stood out
 */
record AxisJolts(Axis axis, double cosine, List<Jolt> jolts) {
  static Optional<AxisJolts> of(Axis axis, AxisRun run, Optional<Response> response) {
    return response.map(r -> new AxisJolts(axis, run.cosine(), r.quiet().jolts()));
  }
}
