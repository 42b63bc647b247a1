package io.github.roundstar.diagnosis;

import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.PierSide;
import java.util.Optional;

/** Whether the mount went over to the other side of its pier between two runs. */
final class Flips {
  private Flips() {}

  /** Whether both tell their side and it changed; a run without a frame tells nothing. */
  static boolean between(GuideRun before, GuideRun after) {
    Optional<PierSide> one = before.pointing().pierSide();
    Optional<PierSide> other = after.pointing().pierSide();
    return after.frames().size() > 0
        && one.isPresent()
        && other.isPresent()
        && one.get() != other.get();
  }
}
