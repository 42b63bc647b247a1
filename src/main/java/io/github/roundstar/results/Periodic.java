package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import java.util.List;

/**
 * Periodic error at the axis.
 *
 * @param peakToPeakArcsecAxis of the summed curve of the worm and its harmonics [arcsec]; null when
 *     no component was found
 * @param maxRateArcsecPerSecondAxis steepest slope of that curve [arcsec/s]
 * @param cycles turns of the worm in the data, or of the strongest component
 * @param repeatability share of the curve that comes back every turn
 * @param components strongest first
 * @param detectable how large a sinusoid must be to stand out; null when no period could be
 *     searched
 */
public record Periodic(
    Estimate peakToPeakArcsecAxis,
    Double maxRateArcsecPerSecondAxis,
    Double cycles,
    Double repeatability,
    List<Component> components,
    Detectable detectable) {
  /** Copies the lists. */
  public Periodic {
    components = List.copyOf(components);
  }
}
