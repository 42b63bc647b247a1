package io.github.roundstar.results;

import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.model.RowCounts;
import java.util.List;

/**
 * Figures of one run.
 *
 * @param id number of the run in the night, from 1
 * @param startUtc time zero of the run, ISO 8601; null when the log has no absolute time
 * @param durationSeconds first to last frame [s]
 * @param mode guided, unguided, or a log without pulses
 * @param frames frames of the run
 * @param counts where every row went
 * @param cadenceSeconds median time between frames [s]; null for a single frame
 * @param guideScaleArcsecPerPixel arcsec per logged pixel
 * @param declinationDeg declination [deg]
 * @param hourAngleHours hour angle at the first frame [h, west positive]
 * @param pierSide side of the pier the tube is on
 * @param guided how the star moved about its mean place
 * @param driftArcsecPerMinuteSky drift of the mount, corrections taken out
 * @param responseArcsecPerSecond what a second of pulse moves
 * @param loop how the guide loop behaved
 * @param noiseFloorArcsec measurement noise
 * @param periodic periodic error at the axis
 * @param backlashArcsecAxis backlash
 * @param stickingArcsecAxis what an axis that sticks withholds; null in results of earlier versions
 * @param budget what the mean square is made of
 * @param settling time lost after dithers
 * @param events what happened when
 */
public record RunResult(
    int id,
    String startUtc,
    double durationSeconds,
    GuidingMode mode,
    int frames,
    RowCounts counts,
    Double cadenceSeconds,
    Double guideScaleArcsecPerPixel,
    Double declinationDeg,
    Double hourAngleHours,
    PierSide pierSide,
    Guided guided,
    AxisDrift driftArcsecPerMinuteSky,
    Response responseArcsecPerSecond,
    Loop loop,
    NoiseFloor noiseFloorArcsec,
    Periodic periodic,
    Backlash backlashArcsecAxis,
    Sticking stickingArcsecAxis,
    Budget budget,
    Settling settling,
    List<Event> events) {
  /** Copies the lists. */
  public RunResult {
    events = List.copyOf(events);
  }
}
