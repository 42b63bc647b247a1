package io.github.roundstar.report;

import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.results.SeasonNight;

/** A night in a row of a table, the same on every page that lists nights. */
final class NightWords {
  private NightWords() {}

  /** What to do, in two or three words. */
  static String decision(SeasonNight night) {
    if (night.decision() == null) {
      return "";
    }
    return switch (night.decision()) {
      case ADJUST_MOUNT -> "work on the mount";
      case ADJUST_POLAR_AXIS -> "align the axis";
      case CHANGE_SETTINGS -> "change settings";
      case REBALANCE -> "rebalance";
      case EXPOSE_SHORTER -> "expose shorter";
      case MEND_OPTICS -> "see to optics";
      case LEAVE_ALONE -> "leave alone";
      case CANNOT_TELL -> "cannot tell";
    };
  }

  /** How many exposures are round; blank where there are no images. */
  static Cell round(SeasonNight night) {
    return night.exposures() == null
        ? Cell.NONE
        : Cell.of(night.roundExposures() + " of " + night.exposures());
  }
}
