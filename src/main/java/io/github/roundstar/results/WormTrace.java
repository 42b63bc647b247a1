package io.github.roundstar.results;

import java.util.List;

/**
 * One turn of the worm, folded from all turns.
 *
 * @param periodSeconds the turn [s]
 * @param cycles turns folded
 * @param curve mean over the turns and one standard deviation between turns either side [share of a
 *     turn, 0..1; arcsec at the axis]
 * @param model the fitted harmonics
 * @param turns the turns one by one; at most twenty
 */
public record WormTrace(
    double periodSeconds, double cycles, Band curve, Polyline model, List<Polyline> turns) {
  /** Copies the lists. */
  public WormTrace {
    turns = List.copyOf(turns);
  }
}
