package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.PierSide;

/**
 * The mount went over to the other side of its pier; figures of the runs before, back to the flip
 * before, beside those of the runs after.
 *
 * @param utc first frame after it, ISO 8601; null when the log has no absolute time
 * @param run number of the first run after it
 * @param to side of the pier that the tube went to
 * @param sameTarget whether the star is the same on both sides
 * @param raRmsArcsec RMS in right ascension [arcsec]
 * @param decRmsArcsec RMS in declination [arcsec]
 * @param raNoiseArcsec noise of a frame in right ascension, on the sky [arcsec]
 * @param decNoiseArcsec noise of a frame in declination [arcsec]
 * @param raDriftArcsecPerMinuteSky drift of the mount in right ascension [arcsec/min]
 * @param decDriftArcsecPerMinuteSky drift of the mount in declination [arcsec/min]
 * @param raResponseArcsecPerSecondAxis what a second of pulse moves in right ascension [arcsec/s]
 * @param decResponseArcsecPerSecondAxis what a second of pulse moves in declination [arcsec/s]
 */
public record Flip(
    String utc,
    int run,
    PierSide to,
    boolean sameTarget,
    Change raRmsArcsec,
    Change decRmsArcsec,
    Change raNoiseArcsec,
    Change decNoiseArcsec,
    Change raDriftArcsecPerMinuteSky,
    Change decDriftArcsecPerMinuteSky,
    Change raResponseArcsecPerSecondAxis,
    Change decResponseArcsecPerSecondAxis) {

  /**
   * One figure; null where either side lacks it.
   *
   * @param before on the side that the tube came from, 95 %
   * @param after on the side that it went to, 95 %
   * @param change after over before; of a drift after less before. Of RMS and noise it is the step
   *     at the flip beside what they do by themselves. All changes of a flip together hold at 95 %
   * @param same what {@code change} is where nothing changed: 1, of a drift 0
   */
  public record Change(Estimate before, Estimate after, Estimate change, double same) {
    /** Whether the flip surely changed the figure. */
    public boolean sure() {
      return !change.covers(same);
    }

    /** Whether it surely grew. */
    public boolean grew() {
      return change.lo95() > same;
    }
  }
}
