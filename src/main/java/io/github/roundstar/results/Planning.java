package io.github.roundstar.results;

import java.util.List;

/**
 * What a night tells of how to take the next one.
 *
 * @param longestExposure how long exposures may last; null where the night cannot be played again
 * @param guideExposure how long guide exposures should last; null where settings cannot be played
 * @param hours what became of the exposures; null without exposures
 * @param recordNext what would settle a decision that is open, the least trouble first; empty where
 *     none is open or nothing would settle it
 */
public record Planning(
    LongestExposure longestExposure,
    GuideExposure guideExposure,
    ExposureHours hours,
    List<Recording> recordNext) {
  /** Copies the list. */
  public Planning {
    recordNext = List.copyOf(recordNext);
  }

  /**
   * The guide exposure that moves the star least, of those played.
   *
   * @param seconds the one to take; today's where none is better by more than a trifle [s]
   * @param nowSeconds today's [s]
   * @param lowSeconds the shortest that is not surely worse, over the draws [s]
   * @param highSeconds the longest that is not surely worse [s]
   * @param playedSeconds all that were played, the shortest first [s]
   */
  public record GuideExposure(
      double seconds,
      double nowSeconds,
      double lowSeconds,
      double highSeconds,
      List<Double> playedSeconds) {
    /** Copies the list. */
    public GuideExposure {
      playedSeconds = List.copyOf(playedSeconds);
    }
  }

  /**
   * A recording that would settle what is open.
   *
   * @param code exposures-listed, larger-dithers, other-hour-angle or more-worm-turns
   * @param text what to record
   * @param figure which figure it narrows
   * @param unit unit of both half widths
   * @param halfWidthNow half of its 95 % interval as it is; null where nothing is known of it
   * @param halfWidthThen the same to expect after the recording
   * @param minutes how long the recording takes [min]
   * @param how how the second half width was worked out
   */
  public record Recording(
      String code,
      String text,
      String figure,
      String unit,
      Double halfWidthNow,
      double halfWidthThen,
      double minutes,
      String how) {}
}
