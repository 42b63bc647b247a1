package io.github.roundstar.results;

import java.util.List;

/**
 * What some of the numbers mean.
 *
 * @param code which finding
 * @param level how much it matters
 * @param title in words
 * @param confidence chance that the level is not too high; 0 to 1
 * @param evidence numbers with intervals
 * @param action what to do, in order
 * @param caution what to take care of; empty where nothing can be hurt
 * @param shareOfTrailing share of both axes' mean square after each exposure's mean is removed; 0
 *     to 1
 * @param expectedRmsRadialArcsec radial RMS to expect after [arcsec]
 * @param expectedRoundExposures round exposures to expect after
 * @param hoursPerNight exposure time that it takes a night [h]
 */
public record Finding(
    String code,
    Level level,
    String title,
    Double confidence,
    String evidence,
    List<String> action,
    String caution,
    Double shareOfTrailing,
    Double expectedRmsRadialArcsec,
    Integer expectedRoundExposures,
    Double hoursPerNight) {
  /** Copies the lists. */
  public Finding {
    action = List.copyOf(action);
  }
}
