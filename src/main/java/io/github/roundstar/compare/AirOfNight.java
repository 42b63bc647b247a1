package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.GuidedIntervals;
import io.github.roundstar.results.Loop;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.RunResult;
import java.util.Optional;

/**
 * What a night's scatter is made of, in both axes: mean squares [arcsec^2] with standard errors.
 *
 * @param ra right ascension
 * @param dec declination
 * @param cosineSquared of the declination; 1 when that is not known
 * @param cadenceSeconds between frames [s]; 0 when not known
 */
record AirOfNight(Axis ra, Axis dec, double cosineSquared, double cadenceSeconds) {
  /**
   * One axis.
   *
   * @param meanSquare of the logged offsets about their mean
   * @param meanSquareError within the night; 0 when the result does not tell it
   * @param noise square of the noise floor
   * @param noiseError of it
   * @param share how often that stands in the mean square
   */
  record Axis(
      double meanSquare,
      double meanSquareError,
      double noise,
      double noiseError,
      NoiseShare share) {
    private static Axis of(double rms, Estimate interval, Estimate floor, NoiseShare share) {
      double rmsError = interval == null ? 0 : Reading.error(interval);
      return new Axis(
          rms * rms,
          2 * rms * rmsError,
          floor.value() * floor.value(),
          2 * floor.value() * Reading.error(floor),
          share);
    }
  }

  /** Empty where the night has no scatter or no noise floor. */
  static Optional<AirOfNight> of(NightResult night) {
    Guided guided = night.night().guided();
    Optional<Estimate> ra = floor(night, NoiseFloor::ra);
    Optional<Estimate> dec = floor(night, NoiseFloor::dec);
    if (guided == null || ra.isEmpty() || dec.isEmpty()) {
      return Optional.empty();
    }
    GuidedIntervals intervals = intervals(night);
    return Optional.of(
        new AirOfNight(
            Axis.of(
                guided.ra().rmsArcsec(),
                intervals == null ? null : intervals.raRmsArcsec(),
                ra.get(),
                NoiseShare.of(night, Loop::ra)),
            Axis.of(
                guided.dec().rmsArcsec(),
                intervals == null ? null : intervals.decRmsArcsec(),
                dec.get(),
                NoiseShare.of(night, Loop::dec)),
            OverRuns.setting(night, RunResult::declinationDeg)
                .map(deg -> Math.pow(Math.cos(Math.toRadians(deg)), 2))
                .orElse(1.0),
            OverRuns.setting(night, RunResult::cadenceSeconds).orElse(0.0)));
  }

  /** The night's noise floor of an axis [arcsec]. */
  static Optional<Estimate> floor(
      NightResult night, java.util.function.Function<NoiseFloor, Estimate> axis) {
    return OverRuns.of(
        night,
        summary -> part(summary.noiseFloorArcsec(), axis),
        run -> part(run.noiseFloorArcsec(), axis));
  }

  private static Estimate part(
      NoiseFloor floor, java.util.function.Function<NoiseFloor, Estimate> axis) {
    return floor == null ? null : axis.apply(floor);
  }

  /** How well the night knows its scatter; null in results of earlier versions. */
  static GuidedIntervals intervals(NightResult night) {
    return night.night().comparison() == null ? null : night.night().comparison().guidedIntervals();
  }
}
