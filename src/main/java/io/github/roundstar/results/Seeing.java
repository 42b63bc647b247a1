package io.github.roundstar.results;

import java.util.List;

/**
 * What the noise of the guide star tells of the air: a range, not an interval.
 *
 * @param leastFwhmArcsec if eddies are endless and exposures average little [arcsec]
 * @param mostFwhmArcsec if exposures average as much as they can [arcsec]
 * @param usualFwhmArcsec the user's usual [arcsec]; null when not given
 * @param runs run by run
 */
public record Seeing(
    double leastFwhmArcsec, double mostFwhmArcsec, Double usualFwhmArcsec, List<SeeingRun> runs) {
  /** Copies. */
  public Seeing {
    runs = List.copyOf(runs);
  }
}
