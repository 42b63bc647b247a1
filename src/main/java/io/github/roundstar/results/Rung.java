package io.github.roundstar.results;

import java.util.List;

/**
 * A rung of the ladder of cures: the night played again with everything of this rung and of the
 * cheaper ones changed.
 *
 * @param rung which
 * @param offered whether there is anything to change on it
 * @param reason why not; null where there is
 * @param cures what is changed on it
 * @param units exposures, or windows of the exposure's length, that are judged
 * @param unitKind exposures or windows
 * @param unitSeconds their length [s]
 * @param round how many of them come out round
 * @param radialRmsArcsec RMS of the star's motion, both axes [arcsec]
 * @param worstAxisRmsArcsec RMS of its motion in the worse axis [arcsec]
 * @param loggedRadialRmsArcsec RMS that the log would show, both axes, noise included [arcsec]
 * @param middleElongation median elongation in the middle of the field
 * @param cornerElongation the same in the worst corner; null where no corner is known
 * @param meetsNeed probability that the need is met
 * @param alone each mechanical cause by itself; null on other rungs
 */
public record Rung(
    String rung,
    boolean offered,
    String reason,
    List<Cure> cures,
    int units,
    String unitKind,
    double unitSeconds,
    Range round,
    Range radialRmsArcsec,
    Range worstAxisRmsArcsec,
    Range loggedRadialRmsArcsec,
    Range middleElongation,
    Range cornerElongation,
    double meetsNeed,
    List<Rung> alone) {
  /** Nothing is changed. */
  public static final String AS_IT_WAS = "as-it-was";

  /** What a setting costs: nothing. */
  public static final String SETTINGS = "settings";

  /** Half an hour with adjusters and weights. */
  public static final String ALIGNMENT_BALANCE = "alignment-balance";

  /** The longest exposures that stay round. */
  public static final String SHORTER_EXPOSURES = "shorter-exposures";

  /** What repeats of the worm's curve is trained out. */
  public static final String TRAINING = "training";

  /** Play, worm, bearings, cables, flexure, optics. */
  public static final String MECHANICS = "mechanics";

  /** The best that any controller can do. */
  public static final String LOOP_LIMIT = "loop-limit";

  /** A perfect mount. */
  public static final String AIR_LIMIT = "air-limit";

  /** Copies the lists. */
  public Rung {
    cures = List.copyOf(cures);
    alone = alone == null ? null : List.copyOf(alone);
  }
}
