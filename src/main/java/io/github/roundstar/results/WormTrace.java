package io.github.roundstar.results;

import java.util.List;
import java.util.Optional;

/**
 * One turn of the worm, folded from all turns.
 *
 * @param periodSeconds the turn [s]
 * @param cycles turns folded
 * @param curve mean over the turns and one standard deviation between turns either side [share of a
 *     turn, 0..1; arcsec at the axis]
 * @param model the fitted harmonics
 * @param turns the turns one by one; at most twenty
 * @param trained what training would leave; empty with fewer than two turns
 */
public record WormTrace(
    double periodSeconds,
    double cycles,
    Band curve,
    Polyline model,
    List<Polyline> turns,
    Optional<Trained> trained) {
  /** Without what training would leave. */
  public WormTrace(
      double periodSeconds, double cycles, Band curve, Polyline model, List<Polyline> turns) {
    this(periodSeconds, cycles, curve, model, turns, Optional.empty());
  }

  /**
   * What is left of a turn when the mean of all others is taken off it, as training with them does.
   *
   * @param left the turn that is left with the middle swing [share of a turn, 0..1; arcsec at the
   *     axis]
   * @param before swing of a turn, peak to peak: middle and 95 % of the turns [arcsec]
   * @param after the same with the others' mean taken off [arcsec]
   */
  public record Trained(Polyline left, Range before, Range after) {}

  /** Copies the lists. */
  public WormTrace {
    turns = List.copyOf(turns);
  }
}
