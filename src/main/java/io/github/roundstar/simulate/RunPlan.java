package io.github.roundstar.simulate;

import io.github.roundstar.model.PierSide;
import io.github.roundstar.sky.SiderealRate;
import io.github.roundstar.sky.StarPlace;
import java.util.OptionalDouble;

/**
 * One run on one star. The slew before it loses the phase of the worm and leaves the declination
 * gear anywhere in its play.
 *
 * @param startMinutes since the start of the night [min]
 * @param durationMinutes length [min]
 * @param declinationDegrees of the star [deg]
 * @param hourAngleHours at the run's first frame [h, west positive]
 * @param pierSide side of the pier the tube is on
 * @param guided whether pulses are sent
 * @param wormPhaseRadians phase of the worm at the run's first frame, drawn by chance if empty
 *     [rad]
 * @param play where the tube stands in the declination play at first, -1..1 from flank to flank,
 *     drawn by chance if empty
 * @param hotPixel whether a fault of the camera's chip is taken for the star: it never moves
 */
public record RunPlan(
    double startMinutes,
    double durationMinutes,
    double declinationDegrees,
    double hourAngleHours,
    PierSide pierSide,
    boolean guided,
    OptionalDouble wormPhaseRadians,
    OptionalDouble play,
    boolean hotPixel) {
  private static final double HOURS_PER_SECOND = SiderealRate.ARCSEC_PER_SECOND / 54_000;

  /** The star's true place at a time of the run. */
  StarPlace star(double seconds) {
    return StarPlace.ofHours(hourAngleHours + seconds * HOURS_PER_SECOND, declinationDegrees);
  }
}
