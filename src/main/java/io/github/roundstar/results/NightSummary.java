package io.github.roundstar.results;

/**
 * Figures over all runs of a night.
 *
 * @param date the evening's date, or {@code undated-...}
 * @param startUtc first frame, ISO 8601; null when the log has no absolute time
 * @param endUtc last frame, ISO 8601
 * @param runs number of runs
 * @param frames number of frames in them
 * @param guidedHours hours from first to last frame, summed over the runs
 * @param guided how the star moved about its mean place; null when no frame was usable
 * @param driftArcsecPerMinuteSky drift of the mount, corrections taken out
 * @param responseArcsecPerSecond what a second of pulse moves
 * @param noiseFloorArcsec measurement noise
 * @param periodic periodic error at the axis
 * @param backlashArcsecAxis backlash
 * @param stickingArcsecAxis what an axis that sticks withholds; null in results of earlier versions
 * @param settling time lost after dithers
 * @param comparison what a comparison with other nights needs besides; null in results of earlier
 *     versions
 * @param learned how much the log taught of these figures; null in results of earlier versions
 * @param pointings fields, flips and what more air does; null in results of earlier versions
 */
public record NightSummary(
    String date,
    String startUtc,
    String endUtc,
    int runs,
    int frames,
    double guidedHours,
    Guided guided,
    AxisDrift driftArcsecPerMinuteSky,
    Response responseArcsecPerSecond,
    NoiseFloor noiseFloorArcsec,
    Periodic periodic,
    Backlash backlashArcsecAxis,
    Sticking stickingArcsecAxis,
    Settling settling,
    ComparisonBasis comparison,
    Learned learned,
    Pointings pointings) {
  /** As in earlier versions. */
  public NightSummary(
      String date,
      String startUtc,
      String endUtc,
      int runs,
      int frames,
      double guidedHours,
      Guided guided,
      AxisDrift driftArcsecPerMinuteSky,
      Response responseArcsecPerSecond,
      NoiseFloor noiseFloorArcsec,
      Periodic periodic,
      Backlash backlashArcsecAxis,
      Sticking stickingArcsecAxis,
      Settling settling,
      ComparisonBasis comparison) {
    this(
        date,
        startUtc,
        endUtc,
        runs,
        frames,
        guidedHours,
        guided,
        driftArcsecPerMinuteSky,
        responseArcsecPerSecond,
        noiseFloorArcsec,
        periodic,
        backlashArcsecAxis,
        stickingArcsecAxis,
        settling,
        comparison,
        null,
        null);
  }
}
