package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.DecResponse;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RaResponse;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import java.util.Optional;
import java.util.function.Function;

/**
 * How pulses acted over the night.
 *
 * @param ra strength in right ascension over the declared one
 * @param dec the same in declination
 * @param eastLessWest strength east less west, as share of their mean
 * @param northLessSouth the same in declination
 * @param crossAxisDeg angle between a pulse in right ascension and the star's motion [deg]
 */
public record PulseReading(
    Optional<Estimate> ra,
    Optional<Estimate> dec,
    Optional<Estimate> eastLessWest,
    Optional<Estimate> northLessSouth,
    Optional<Estimate> crossAxisDeg) {

  /** Of a night. */
  public static PulseReading of(NightResult night) {
    Optional<Estimate> angle = Pooled.estimate(night, of(Response::crossAxisDeg));
    return new PulseReading(
        Pooled.estimate(night, of(PulseReading::raStrength)),
        Pooled.estimate(night, of(PulseReading::decStrength)),
        Pooled.estimate(night, of(r -> r.ra() == null ? null : raDifference(r.ra()))),
        Pooled.estimate(night, of(r -> r.dec() == null ? null : decDifference(r.dec()))),
        angle);
  }

  /** Strength over the declared one in one axis. */
  Optional<Estimate> strength(Axis axis) {
    return axis == Axis.RA ? ra : dec;
  }

  /**
   * Why strengths cannot be trusted: a camera that is surely turned mixes the axes, so that each
   * one's strength comes out wrong. Empty when it is not.
   */
  Optional<String> mixed() {
    return crossAxisDeg
        .map(angle -> Deviation.from(angle, 0).lo95())
        .filter(least -> Math.sin(Math.toRadians(least)) >= Thresholds.SPOILS_WORTH)
        .map(least -> "the camera is turned, which mixes the axes: set its angle right first");
  }

  /** Whether both axes are off by one and the same factor, to within what is called off. */
  boolean bothOff() {
    return ra.isPresent()
        && dec.isPresent()
        && Thresholds.off(ra.get(), Thresholds.STRENGTH_OFF)
        && Thresholds.off(dec.get(), Thresholds.STRENGTH_OFF)
        && ra.get().lo95() <= dec.get().hi95() * (1 + Thresholds.STRENGTH_OFF)
        && dec.get().lo95() <= ra.get().hi95() * (1 + Thresholds.STRENGTH_OFF);
  }

  private static Function<RunResult, Estimate> of(Function<Response, Estimate> figure) {
    return run ->
        run.responseArcsecPerSecond() == null ? null : figure.apply(run.responseArcsecPerSecond());
  }

  private static Estimate raStrength(Response response) {
    RaResponse ra = response.ra();
    return ra == null || ra.axis() == null || ra.declaredAxis() == null
        ? null
        : ra.axis().times(1 / ra.declaredAxis());
  }

  private static Estimate decStrength(Response response) {
    DecResponse dec = response.dec();
    return dec == null || dec.axis() == null || dec.declaredAxis() == null
        ? null
        : dec.axis().times(1 / dec.declaredAxis());
  }

  private static Estimate raDifference(RaResponse ra) {
    return difference(ra.east(), ra.west());
  }

  private static Estimate decDifference(DecResponse dec) {
    return difference(dec.north(), dec.south());
  }

  /** Difference over mean; the two directions' errors taken as independent. */
  private static Estimate difference(Estimate one, Estimate other) {
    if (one == null || other == null) {
      return null;
    }
    double mean = (one.value() + other.value()) / 2;
    double half = Math.hypot(halfWidth(one), halfWidth(other));
    return mean <= 0 ? null : Estimate.symmetric((one.value() - other.value()) / mean, half / mean);
  }

  private static double halfWidth(Estimate estimate) {
    return (estimate.hi95() - estimate.lo95()) / 2;
  }
}
