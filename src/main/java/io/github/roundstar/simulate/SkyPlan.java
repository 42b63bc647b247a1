package io.github.roundstar.simulate;

import java.util.List;
import java.util.Optional;

/**
 * What air, clouds and wind do to the guide star.
 *
 * @param noiseArcsec plain white measurement error per axis, in addition to seeing [arcsec]
 * @param seeing image motion and centroid noise, if any
 * @param star brightness of the guide star
 * @param gusts gusts of wind, if any
 * @param cloudRate clouds that come at random, if any
 * @param clouds clouds at given times
 * @param knocks sudden lasting shifts
 * @param shifts lasting shifts that take their time
 * @param switches changes of the guide star
 */
public record SkyPlan(
    double noiseArcsec,
    Optional<Seeing> seeing,
    Star star,
    Optional<Gusts> gusts,
    Optional<CloudRate> cloudRate,
    List<Cloud> clouds,
    List<Knock> knocks,
    List<Shift> shifts,
    List<StarSwitch> switches) {
  /** Copies. */
  public SkyPlan {
    clouds = List.copyOf(clouds);
    knocks = List.copyOf(knocks);
    shifts = List.copyOf(shifts);
    switches = List.copyOf(switches);
  }

  /**
   * Turbulent air over the guide scope.
   *
   * @param fwhmArcsec full width at half maximum of a star image [arcsec]
   * @param apertureMillimetres of the guide scope [mm]
   * @param windMetresPerSecond that carries the turbulence along [m/s]
   * @param outerScaleMetres largest eddies [m]
   */
  public record Seeing(
      double fwhmArcsec,
      double apertureMillimetres,
      double windMetresPerSecond,
      double outerScaleMetres) {}

  /**
   * The guide star.
   *
   * @param snr signal to noise under a clear sky
   * @param fluxAdu flux under a clear sky [adu]
   * @param variation relative size of slow changes of the flux
   * @param lostBelowSnr fainter than this the star is not measured
   */
  public record Star(double snr, double fluxAdu, double variation, double lostBelowSnr) {}

  /**
   * Gusts, at random times and of random sign.
   *
   * @param perHour how many
   * @param amplitudeArcsec mean size; single ones have 0.5 to 1.5 times this [arcsec]
   * @param durationSeconds mean duration, spread alike [s]
   * @param raShare part of the mean square that goes into right ascension, 0..1
   */
  public record Gusts(
      double perHour, double amplitudeArcsec, double durationSeconds, double raShare) {}

  /**
   * Clouds at random times.
   *
   * @param perHour how many
   * @param minutes mean duration; single ones have 0.5 to 1.5 times this [min]
   * @param depth largest share of the light taken away, 0..1
   */
  public record CloudRate(double perHour, double minutes, double depth) {}

  /**
   * One cloud.
   *
   * @param atMinutes begin, since the start of the night [min]
   * @param minutes duration [min]
   * @param depth share of the light taken away in its middle, 0..1
   */
  public record Cloud(double atMinutes, double minutes, double depth) {}

  /**
   * One lasting shift of the star, on the sky.
   *
   * @param atMinutes since the start of the night [min]
   * @param raArcsec east [arcsec]
   * @param decArcsec north [arcsec]
   */
  public record Knock(double atMinutes, double raArcsec, double decArcsec) {}

  /**
   * A lasting shift of the star that builds up evenly, as when a cable pulls.
   *
   * @param atMinutes begin, since the start of the night [min]
   * @param seconds how long it builds up [s]
   * @param raArcsec east [arcsec]
   * @param decArcsec north [arcsec]
   */
  public record Shift(double atMinutes, double seconds, double raArcsec, double decArcsec) {}

  /**
   * The guide camera goes over to another star.
   *
   * @param atMinutes since the start of the night [min]
   * @param raArcsec where the new star stands, east of the old one [arcsec]
   * @param decArcsec where it stands north of the old one [arcsec]
   * @param fluxRatio its light over that of the old one
   */
  public record StarSwitch(double atMinutes, double raArcsec, double decArcsec, double fluxRatio) {}
}
