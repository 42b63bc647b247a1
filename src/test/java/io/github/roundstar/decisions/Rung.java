package io.github.roundstar.decisions;

import java.util.Optional;

/** Rungs of the ladder in their order, cheapest first. */
enum Rung {
  AS_IT_WAS,
  SETTINGS,
  ALIGNMENT_BALANCE,
  SHORTER_EXPOSURES,
  TRAINING,
  MECHANICS,
  LOOP_LIMIT,
  AIR_LIMIT;

  /** As the JSON has it. */
  String key() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  static Optional<Rung> of(String key) {
    for (Rung rung : values()) {
      if (rung.key().equals(key)) {
        return Optional.of(rung);
      }
    }
    return Optional.empty();
  }

  /** Whether tools are laid on the mount. */
  boolean mechanical() {
    return this == MECHANICS;
  }
}
