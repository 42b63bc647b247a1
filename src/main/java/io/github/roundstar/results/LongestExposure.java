package io.github.roundstar.results;

/**
 * The longest exposure that stays round: at which this share of all exposures of a length still has
 * an elongation within the limit, in the middle of the field and in its worst corner.
 *
 * @param roundShare share of the exposures
 * @param elongationLimit major over minor axis of a star
 * @param playedFromSeconds shortest length that was played [s]
 * @param playedToSeconds longest length that was played [s]
 * @param because why no longer one was played
 * @param asItWas for the night as it was
 * @param withSteps for the night with all that is recommended done; null where nothing is
 */
public record LongestExposure(
    double roundShare,
    double elongationLimit,
    double playedFromSeconds,
    double playedToSeconds,
    String because,
    Length asItWas,
    Length withSteps) {

  /**
   * A length with its 95 % interval over the posterior's draws, the ends of which are lengths that
   * were played. What lies beyond those is null.
   *
   * @param stays whether it was found: found, longer than was played, or shorter
   * @param seconds median of the draws; null unless it was found [s]
   * @param lowSeconds lower end; null where it is shorter than was played [s]
   * @param highSeconds upper end; null where it is longer than was played [s]
   */
  public record Length(String stays, Double seconds, Double lowSeconds, Double highSeconds) {
    /** It lies among the lengths played. */
    public static final String FOUND = "found";

    /** Every length played stays round. */
    public static final String LONGER = "longer";

    /** No length played stays round. */
    public static final String SHORTER = "shorter";
  }
}
