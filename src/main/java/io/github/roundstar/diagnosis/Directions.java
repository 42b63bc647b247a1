package io.github.roundstar.diagnosis;

import io.github.roundstar.model.SkySense;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import java.util.List;

/** Figures with a direction, which a log without named directions does not have. */
final class Directions {
  private Directions() {}

  /** The directions that all runs tell apart. */
  static SkySense of(List<RunStudy> studies) {
    return studies.stream().map(study -> study.run().sense()).reduce(SkySense.KNOWN, SkySense::and);
  }

  /** The figure where the directions of its axis are known; else the reason. */
  static <T> Answer<T> of(SkySense sense, Axis axis, Answer<T> figure) {
    boolean known = axis == Axis.RA ? sense.ra() : sense.dec();
    return known ? figure : Answer.none(because(axis));
  }

  /** Why a figure with a direction cannot be had. */
  static String because(Axis axis) {
    return axis == Axis.RA
        ? "the log does not tell east from west: in the layout, replace one-way and other-way of"
            + " right ascension by east and west, or the reverse"
        : "the log does not tell north from south: in the layout, replace one-way and other-way of"
            + " declination by north and south, or the reverse";
  }

  /** Why a figure that needs both axes' directions cannot be had. */
  static String because(SkySense sense) {
    return because(sense.ra() ? Axis.DEC : Axis.RA);
  }
}
