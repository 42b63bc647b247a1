package io.github.roundstar.compare;

import io.github.roundstar.results.NightResult;
import java.util.function.Function;

/**
 * A figure that is compared.
 *
 * @param key short name, never changed
 * @param name in words
 * @param kind what it belongs to
 * @param unit unit of its values
 * @param aim what would be better
 * @param margin changes within it are none in practice
 * @param nightToNight standard deviation that nights show by themselves
 * @param reading what a night says
 */
record Figure(
    String key,
    String name,
    Kind kind,
    String unit,
    Aim aim,
    Tolerance margin,
    Tolerance nightToNight,
    Function<NightResult, Reading> reading) {

  /** What a figure belongs to; nights scatter alike within a kind. */
  enum Kind {
    PERIODIC("mount"),
    DRIFT("mount"),
    POLAR("mount"),
    GEARS("mount"),
    GUIDING("guiding"),
    AIR("air");

    private final String group;

    Kind(String group) {
      this.group = group;
    }

    String group() {
      return group;
    }
  }
}
