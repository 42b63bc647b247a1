package io.github.roundstar.results;

import java.util.List;

/**
 * Amplitude against period.
 *
 * @param amplitude [s; arcsec at the axis], ascending periods
 * @param onePercent amplitude that wander and noise alone reach in one night of a hundred anywhere
 *     in the range
 * @param components what was found
 */
public record SpectrumTrace(Polyline amplitude, Polyline onePercent, List<Component> components) {
  /** Copies the lists. */
  public SpectrumTrace {
    components = List.copyOf(components);
  }
}
