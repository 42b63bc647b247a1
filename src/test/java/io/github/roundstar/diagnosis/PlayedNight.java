package io.github.roundstar.diagnosis;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;

/**
 * A night to play, drawn at random: geometry, seeing, cadence and gain of a sound set-up, to which
 * faults are then added. Everything is invented.
 */
final class PlayedNight {
  static final double WORM_SECONDS = 478.7;

  final long seed;
  final Random random;
  double minutes = 120;
  double declination;
  double hourAngle;
  double cadence;
  double noise;
  double raGain;
  double decGain;
  String decDirection = "both";
  double worm;
  double play;
  double azimuth;
  double altitude;
  double rateError;
  double east = 1;
  double west = 1;
  double north = 1;
  double south = 1;
  double cameraAngle;
  double ditherMinutes = 12;
  double settleArcsec;
  double settleLimit = 60;
  double lostBelowSnr = 8;
  double decWander = 0.006;
  double wormPhase;
  boolean guided = true;
  boolean hotPixel;
  Optional<PlayedCamera> camera = Optional.empty();
  String more = "";
  private final double soundArcsec2;
  private double leastTimes = 2;
  private double mostTimes = 6;

  private PlayedNight(long seed) {
    this.seed = seed;
    // First draws of seeds that follow each other are nearly the same; scrambled ones are not.
    random = new Random(new SplittableRandom(seed).nextLong());
    declination = between(-5, 60);
    hourAngle = between(-3, 1);
    cadence = 2 + random.nextInt(3);
    noise = between(0.18, 0.35);
    raGain = between(0.4, 0.65);
    decGain = between(0.4, 0.65);
    worm = between(0.5, 2);
    play = between(0, 0.4);
    azimuth = between(-2, 2);
    altitude = between(-2, 2);
    east = between(0.97, 1.03);
    west = between(0.97, 1.03);
    north = between(0.97, 1.03);
    south = between(0.97, 1.03);
    cameraAngle = between(-2, 2);
    wormPhase = between(-3, 3);
    if (random.nextBoolean()) {
      noise = between(0.1, 0.2);
      more = seeing(between(1.5, 3.5), between(3, 10));
    }
    settleArcsec = 3 + 2 * noise;
    soundArcsec2 = meanSquareArcsec2();
  }

  /** Image motion that has a colour, as of a layer of air that drifts past. */
  private static String seeing(double fwhmArcsec, double windMetresPerSecond) {
    return String.format(
        Locale.ROOT,
        """
        [seeing]
        fwhm_arcsec = %.2f
        aperture_mm = 60
        wind_m_per_s = %.1f
        outer_scale_m = 25
        """,
        fwhmArcsec,
        windMetresPerSecond);
  }

  /** A sound night. */
  static PlayedNight sound(long seed) {
    return new PlayedNight(seed);
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** How many times the size that makes a fault come first. */
  double times() {
    return between(leastTimes, mostTimes);
  }

  /** Two faults of one night are of like size, since each is weighed against both. */
  PlayedNight withTwoFaults() {
    leastTimes = 1.3;
    mostTimes = 1.7;
    return this;
  }

  /** Mean square of the logged offsets of the night as it stands, in both axes [arcsec^2]. */
  double meanSquareArcsec2() {
    return meanSquareArcsec2(Axis.RA) + meanSquareArcsec2(Axis.DEC);
  }

  /** The same in one axis. */
  double meanSquareArcsec2(Axis axis) {
    Frames frames = run().log().frames();
    double sum = 0;
    int used = 0;
    for (int i = 0; i < frames.size(); i++) {
      if (frames.state(i) == FrameState.USED) {
        double arcsec = axis == Axis.RA ? frames.raArcsec(i) : frames.decArcsec(i);
        sum += arcsec * arcsec;
        used++;
      }
    }
    return used == 0 ? 0 : sum / used;
  }

  /**
   * Mean square that makes a cause come first: 44 % of the whole, for a cut of a quarter, and a cut
   * of 0.15 arcsec [arcsec^2].
   */
  double fixFirstArcsec2() {
    double sound = soundArcsec2;
    double byCut = sound * 0.4375 / (1 - 0.4375);
    double bySize = Math.pow(Math.sqrt(sound) + 0.15, 2) - sound;
    return Math.max(byCut, bySize);
  }

  /** The night's one run. */
  SimulatedRun run() {
    return night().runs().get(0);
  }

  /** The night as it stands. */
  SimulatedNight night() {
    try {
      return Simulation.run(ScenarioReader.parse("played", scenario()));
    } catch (FormatException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Puts a camera beside the guider, or gives the one that is there. */
  PlayedCamera exposing(int seconds) {
    if (camera.isEmpty()) {
      camera = Optional.of(new PlayedCamera(seconds));
    }
    return camera.get();
  }

  private String scenario() {
    return String.format(
            Locale.ROOT,
            """
        [night]
        seed = %d
        start = "2026-10-08T20:10:00+02:00"
        latitude_deg = 47.2
        longitude_deg = 11.6
        cadence_s = %.1f
        guide_exposure_s = %.2f
        guide_scale = 2.43
        [polar_axis]
        azimuth_arcmin = %.3f
        altitude_arcmin = %.3f
        [noise]
        white_arcsec = %.3f
        [star]
        snr = 40
        lost_below_snr = %.1f
        [loop]
        pulse_limit_ms = %.0f
        dec_direction = "%s"
        [loop.ra]
        gain = %.3f
        deadband_arcsec = 0.1
        [loop.dec]
        gain = %.3f
        deadband_arcsec = 0.15
        [dither]
        every_min = %.2f
        size_arcsec = 4
        settle_arcsec = %.3f
        settle_limit_s = %.1f
        [[run]]
        duration_min = %.1f
        declination_deg = %.2f
        hour_angle_h = %.3f
        guided = %b
        hot_pixel = %b
        [mount]
        guide_rate = 0.5
        worm_period_s = %.1f
        ra_wander_arcsec_per_root_s = 0.008
        dec_wander_arcsec_per_root_s = %.4f
        dec_backlash_arcsec = %.3f
        response_east = %.3f
        response_west = %.3f
        response_north = %.3f
        response_south = %.3f
        rate_error_arcsec_per_min = %.3f
        camera_angle_deg = %.2f
        [[mount.harmonic]]
        order = 1
        amplitude_arcsec = %.3f
        phase_rad = %.3f
        """,
            seed,
            cadence,
            cadence * 0.75,
            azimuth,
            altitude,
            noise,
            lostBelowSnr,
            Math.min(1500, cadence * 1000),
            decDirection,
            raGain,
            decGain,
            ditherMinutes,
            settleArcsec,
            settleLimit,
            minutes,
            declination,
            hourAngle,
            guided,
            hotPixel,
            WORM_SECONDS,
            decWander,
            play,
            east,
            west,
            north,
            south,
            rateError,
            cameraAngle,
            worm,
            wormPhase)
        + more
        + camera.map(PlayedCamera::scenario).orElse("");
  }
}
