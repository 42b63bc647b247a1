package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * How the star grows unsteady with the air that it is seen through, within each field of the night.
 *
 * @param leastAirmass least airmass of the night; null when not to be told
 * @param mostAirmass greatest airmass
 * @param noisePerDoubling by what the noise of a frame is multiplied through twice the air
 * @param rmsPerDoubling by what the radial RMS is multiplied through twice the air
 */
public record AirmassGrowth(
    Double leastAirmass, Double mostAirmass, Estimate noisePerDoubling, Estimate rmsPerDoubling) {
  /** Whether more air surely makes the star more unsteady, in its noise and in the guiding. */
  public boolean shows() {
    return noisePerDoubling.lo95() > 1 && rmsPerDoubling.lo95() > 1;
  }
}
