package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.sky.GuideTolerance;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the mount's axis points and what that does to the corner of a picture.
 *
 * @param axis the figures
 * @param totalArcmin distance from the pole [arcmin]
 * @param cornerTrailArcsec trail in the corner with the interval of the distance [arcsec]
 */
record AxisReading(PolarAxis axis, Estimate totalArcmin, Optional<Estimate> cornerTrailArcsec) {
  /** The reading; empty when the axis is not known. */
  static Optional<AxisReading> of(NightResult night) {
    PolarAxis axis = night.polarAxis();
    if (axis == null || axis.totalArcmin() == null) {
      return Optional.empty();
    }
    Estimate total = axis.totalArcmin();
    boolean trail = axis.cornerTrailArcsec() != null && total.value() > 0;
    return Optional.of(
        new AxisReading(
            axis,
            total,
            trail
                ? Optional.of(total.times(axis.cornerTrailArcsec() / total.value()))
                : Optional.empty()));
  }

  /**
   * Whether two pointings or the drift's curvature tell the axis, not one direction alone, and the
   * drifts are what an axis makes.
   */
  boolean whole() {
    return !"one-direction".equals(axis.basis()) && !Boolean.FALSE.equals(axis.consistent());
  }

  /**
   * Trail that brings a star to the user's limit of elongation: a uniform trail of length L has a
   * variance of L^2/12 [arcsec]. Empty when the seeing is not known.
   */
  static OptionalDouble longestTrailArcsec(Equipment equipment) {
    if (equipment.seeingFwhmArcsec().isEmpty()) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        Math.sqrt(12)
            * GuideTolerance.axisRmsArcsec(
                equipment.seeingFwhmArcsec().getAsDouble(), equipment.limits().elongation()));
  }
}
