package io.github.roundstar.simulate;

import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.Site;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * All that makes a simulated night. The same scenario always gives the same night.
 *
 * @param evening when, where and how the night is logged
 * @param air present if refraction is to lift the stars
 * @param polarAxis where the mount's axis points
 * @param mount what the mount does wrong
 * @param sky what air, clouds and wind do
 * @param loop the guide loop
 * @param dither wanted moves of the set point, if any
 * @param runs at least one run, in order of time
 * @param exposures what the main camera does, if it is named
 */
public record Scenario(
    Evening evening,
    Optional<Air> air,
    PolarError polarAxis,
    MountPlan mount,
    SkyPlan sky,
    LoopPlan loop,
    Optional<DitherPlan> dither,
    List<RunPlan> runs,
    Optional<ExposurePlan> exposures) {
  private static final double LOWEST_ALTITUDE_DEGREES = Refraction.LOWEST_ALTITUDE_DEGREES + 1;
  private static final int MOST_FRAMES = 2_000_000;

  /** Checks and copies. */
  public Scenario {
    runs = List.copyOf(runs);
    if (runs.isEmpty()) {
      throw new IllegalArgumentException("a night without a run");
    }
    if (loop.pulseLimitMillis() > 1000 * evening.cadenceSeconds) {
      throw new IllegalArgumentException(
          "pulse limit " + loop.pulseLimitMillis() + " ms is longer than the cadence");
    }
    double minutes = 0;
    for (RunPlan run : runs) {
      minutes += run.durationMinutes();
    }
    if (minutes * 60 / evening.cadenceSeconds > MOST_FRAMES) {
      throw new IllegalArgumentException("more than " + MOST_FRAMES + " frames");
    }
    if (air.isPresent()) {
      runs.forEach(run -> refuseLowStar(new Site(evening.latitudeDegrees), run));
    }
  }

  private static void refuseLowStar(Site site, RunPlan run) {
    for (double minute = 0; minute <= run.durationMinutes(); minute++) {
      double altitude = site.altitudeDegrees(run.star(minute * 60));
      if (altitude < LOWEST_ALTITUDE_DEGREES) {
        throw new IllegalArgumentException(
            "the star of the run at "
                + run.startMinutes()
                + " min sinks below "
                + LOWEST_ALTITUDE_DEGREES
                + " degrees, too low for refraction");
      }
    }
  }

  /** The main camera; a plain one where none is named. */
  ExposurePlan camera() {
    return exposures.orElse(ExposurePlan.PLAIN);
  }

  /** The same scenario with other dice. */
  public Scenario withSeed(long seed) {
    return new Scenario(
        new Evening(
            seed,
            evening.start,
            evening.latitudeDegrees,
            evening.longitudeDegrees,
            evening.cadenceSeconds,
            evening.exposureSeconds,
            evening.scaleArcsecPerPixel,
            evening.inPixels),
        air,
        polarAxis,
        mount,
        sky,
        loop,
        dither,
        runs,
        exposures);
  }

  /**
   * When, where and how the night is logged.
   *
   * @param seed of all chance
   * @param start instant that the minutes of runs and events count from
   * @param latitudeDegrees north positive [deg]
   * @param longitudeDegrees east positive [deg]
   * @param cadenceSeconds from one guide exposure's middle to the next [s]
   * @param exposureSeconds guide exposure, at most the cadence [s]
   * @param scaleArcsecPerPixel of the guide camera [arcsec]
   * @param inPixels whether the log gives offsets in pixels instead of arcsec
   */
  public record Evening(
      long seed,
      Instant start,
      double latitudeDegrees,
      double longitudeDegrees,
      double cadenceSeconds,
      double exposureSeconds,
      double scaleArcsecPerPixel,
      boolean inPixels) {
    /** Checks. */
    public Evening {
      Objects.requireNonNull(start, "start");
      if (!(exposureSeconds > 0 && exposureSeconds <= cadenceSeconds)) {
        throw new IllegalArgumentException(
            "exposure " + exposureSeconds + " s does not fit into cadence " + cadenceSeconds);
      }
    }
  }

  /**
   * The air that refracts.
   *
   * @param pressureHectopascal at the site [hPa]
   * @param temperatureCelsius of the air [deg C]
   */
  public record Air(double pressureHectopascal, double temperatureCelsius) {}

  /**
   * Error of the elevated end of the mount's axis against the true pole.
   *
   * @param azimuthArcmin east positive, about the vertical [arcmin]
   * @param altitudeArcmin above positive [arcmin]
   */
  public record PolarError(double azimuthArcmin, double altitudeArcmin) {}
}
