package io.github.roundstar.results;

import java.util.List;

/**
 * What the steps that a night recommends should bring: the night played again with all of them done
 * and nothing else.
 *
 * @param cures the steps as on the ladder, with their numbers
 * @param units exposures, or windows of the exposure's length, that are judged
 * @param unitKind exposures or windows
 * @param unitSeconds their length; where shorter exposures are a step, the shorter one [s]
 * @param round how many of them come out round
 * @param radialRmsArcsec RMS of the star's motion, both axes [arcsec]
 * @param worstAxisRmsArcsec RMS of its motion in the worse axis [arcsec]
 * @param loggedRadialRmsArcsec RMS that the log would show, both axes, the noise of this night
 *     included [arcsec]
 * @param meetsNeed probability that the need is met then
 */
public record Promise(
    List<Cure> cures,
    int units,
    String unitKind,
    double unitSeconds,
    Range round,
    Range radialRmsArcsec,
    Range worstAxisRmsArcsec,
    Range loggedRadialRmsArcsec,
    double meetsNeed) {
  /** Copies the list. */
  public Promise {
    cures = List.copyOf(cures);
  }

  /** What a rung shows, with the steps that lead there. */
  public static Promise of(Rung there, List<Cure> steps) {
    return new Promise(
        steps,
        there.units(),
        there.unitKind(),
        there.unitSeconds(),
        there.round(),
        there.radialRmsArcsec(),
        there.worstAxisRmsArcsec(),
        there.loggedRadialRmsArcsec(),
        there.meetsNeed());
  }
}
