package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.sky.StarPlace;
import java.util.Optional;

/**
 * One run as the polar axis is looked for in it.
 *
 * @param dec motion in declination, north positive, with the fit that tells drift from wander
 * @param decDrift that drift, as it is told [arcsec/min]
 * @param raDriftSky drift in right ascension on the sky, east positive [arcsec/min]; nothing where
 *     it is not known or the star stands too near the pole
 * @param atZero true place of the star at the run's time zero
 * @param pierSide side of the pier the tube is on
 */
public record PointedRun(
    MountDrift dec,
    Estimate decDrift,
    Optional<Estimate> raDriftSky,
    StarPlace atZero,
    Optional<PierSide> pierSide) {

  RunBackground background() {
    return dec.background();
  }

  /** Time of the first measured frame since the run's time zero [s]. */
  public double firstSeconds() {
    return background().run().motion().seconds(0);
  }

  /** Time of the last measured frame [s]. */
  public double lastSeconds() {
    return firstSeconds() + background().run().motion().spanSeconds();
  }

  /** True place of the star in the middle of the run. */
  public StarPlace middle() {
    return atZero.later((firstSeconds() + lastSeconds()) / 2);
  }

  /** +1 where the motor's north is the sky's (tube west of the pier), -1 where not, 0 unknown. */
  int motorSign() {
    return pierSide.map(side -> side == PierSide.WEST ? 1 : -1).orElse(0);
  }
}
