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
public record AxisReading(
    PolarAxis axis, Estimate totalArcmin, Optional<Estimate> cornerTrailArcsec) {
  /** The reading; empty when the axis is not known. */
  public static Optional<AxisReading> of(NightResult night) {
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
   * Least distance from the pole where the axis is not known whole [arcmin]: by the part of its
   * error that is, else by the drift in declination less what refraction may make of it; empty
   * where the axis is known, where what drifts is none, and where nothing is told.
   */
  public static Optional<Estimate> leastArcmin(NightResult night) {
    PolarAxis axis = night.polarAxis();
    if (axis != null) {
      return axis.totalArcmin() != null || Boolean.FALSE.equals(axis.consistent())
          ? Optional.empty()
          : Optional.of(distance(axis.known().arcmin()));
    }
    return Optional.ofNullable(night.night().driftArcsecPerMinuteSky())
        .flatMap(drift -> Optional.ofNullable(drift.dec()))
        .map(drift -> distance(drift).times(1 / Thresholds.DRIFT_PER_ARCMIN))
        .map(
            arcmin ->
                new Estimate(
                    arcmin.value(),
                    Math.max(0, arcmin.lo95() - Thresholds.REFRACTION_DEC_ARCMIN),
                    arcmin.hi95() + Thresholds.REFRACTION_DEC_ARCMIN));
  }

  private static Estimate distance(Estimate signed) {
    double low = Math.min(Math.abs(signed.lo95()), Math.abs(signed.hi95()));
    double high = Math.max(Math.abs(signed.lo95()), Math.abs(signed.hi95()));
    return new Estimate(Math.abs(signed.value()), signed.covers(0) ? 0 : low, high);
  }

  /** Whether the drifts of all runs are what an axis makes, and nothing that bends. */
  public boolean proved() {
    return Boolean.TRUE.equals(axis.consistent());
  }

  /**
   * Whether the drifts are neither an axis's nor an axis's with a regular drift beside it: then
   * they are those of something that bends or slips, and the axis found in them means nothing.
   */
  public boolean refuted() {
    return Boolean.FALSE.equals(axis.consistent()) && axis.beside() == null;
  }

  /** Why a refuted axis is not to be turned. */
  public String whyRefuted() {
    String left =
        axis.residualArcsecPerMinute() == null
            ? ""
            : Wording.number(axis.residualArcsecPerMinute()) + " arcsec a minute are left over: ";
    return "the drifts of the runs are not what an axis makes: "
        + left
        + "look for flexure, something loose or a cable before the adjusters are turned";
  }

  /**
   * Share of the drift's mean square that the axis makes where some drift stands beside it; 1
   * without. The axis drifts by what it makes at most, the square of the sum is shared out.
   */
  public double shareOfDrift() {
    if (axis.beside() == null || !Boolean.FALSE.equals(axis.consistent())) {
      return 1;
    }
    double own = Thresholds.DRIFT_PER_ARCMIN * totalArcmin.value();
    double other = Math.abs(axis.beside().arcsecPerMinute().value());
    return own == 0 ? 0 : Math.pow(own / (own + other), 2);
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
