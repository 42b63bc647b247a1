package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Invented nights with one fault each, and the cause that its trailed exposures have. */
enum SingleFault {
  PERIODIC_ERROR(
      "periodic-error",
      """
      [mount]
      worm_period_s = 240
      [[mount.harmonic]]
      order = 1
      amplitude_arcsec = 22
      [loop.ra]
      gain = 0.15
      """,
      ""),
  POLAR_AXIS(
      "polar-axis",
      """
      [polar_axis]
      azimuth_arcmin = 18
      altitude_arcmin = 10
      [loop]
      dec_direction = "off"
      """,
      ""),
  DEC_BACKLASH(
      "dec-backlash",
      """
      [mount]
      dec_backlash_arcsec = 7
      dec_wander_arcsec_per_root_s = 0.12
      [loop.dec]
      gain = 0.5
      """,
      ""),
  JOLTS("jolts", "[loop.ra]\ngain = 0.12\n" + knocks(), ""),
  OVER_CORRECTION(
      "over-correction",
      """
      [loop.ra]
      gain = 1.05
      delay_frames = 1
      """,
      ""),
  SLOW_SETTLING(
      "slow-settling",
      """
      [loop.ra]
      gain = 0.12
      [loop.dec]
      gain = 0.5
      """,
      "wait_s = 2"),
  DIFFERENTIAL_FLEXURE(
      "differential-flexure",
      "",
      "flexure_ra_arcsec_per_hour = 30\nflexure_dec_arcsec_per_hour = 9"),
  OPTICS("optics", "", "elongation = 1.35\nangle_deg = 40"),
  STAR_LOST("star-lost", clouds(), ""),
  DIFFERENTIAL_REFRACTION(
      "differential-refraction",
      """
      [air]
      pressure_hpa = 1010
      temperature_c = 10
      """,
      "guide_star_east_arcmin = 180\nguide_star_north_arcmin = -360"),
  DISPERSION("atmospheric-dispersion", "", "dispersion_arcsec = 0.85"),
  FIELD_ROTATION(
      "field-rotation",
      """
      [polar_axis]
      azimuth_arcmin = 45
      altitude_arcmin = 25
      """,
      "scale = 3\nwidth_px = 2000\nheight_px = 1400"),
  OPTICS_OUTWARD("optics", "", "elongation = 1.5\nradial = true"),
  TILT("optics", "", "elongation = 1.5\nangle_deg = 70\none_sided = true"),
  FOCUS("focus", "", "angle_deg = 110\ndefocus_arcsec_per_hour = 4");

  /** The guide star behind a cloud for some minutes, every fourteen minutes. */
  private static String clouds() {
    StringBuilder clouds = new StringBuilder();
    for (int minute = 3; minute < 100; minute += 14) {
      clouds.append("[[cloud]]\nat_min = ").append(minute);
      clouds.append("\nminutes = 8\ndepth = 1.0\n");
    }
    return clouds.toString();
  }

  /** The verdict that exposures with this fault get. */
  String verdict() {
    return this == STAR_LOST ? "not covered" : "trailed";
  }

  /** What the user tells of site and optics. */
  Equipment equipment() {
    Equipment no = Equipment.UNKNOWN;
    return this != DIFFERENTIAL_REFRACTION
        ? no
        : new Equipment(
            no.site(),
            no.mount(),
            new Equipment.GuideOptics(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                false,
                OptionalDouble.of(-180),
                OptionalDouble.of(-360),
                Optional.of(Equipment.Arrangement.GUIDE_SCOPE)),
            new Equipment.ImagingOptics(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(0),
                false),
            no.seeingFwhmArcsec(),
            no.limits());
  }

  /** A cable that catches and lets go, once in each exposure. */
  private static String knocks() {
    StringBuilder knocks = new StringBuilder();
    for (int minute = 3; minute < 100; minute += 4) {
      knocks.append("[[knock]]\nat_min = ").append(minute);
      knocks.append("\nra_arcsec = ").append(minute % 8 == 3 ? 7 : -7).append('\n');
    }
    return knocks.toString();
  }

  final String cause;
  private final String mount;
  private final String camera;

  SingleFault(String cause, String mount, String camera) {
    this.cause = cause;
    this.mount = mount;
    this.camera = camera;
  }

  /** A night of 100 minutes. */
  String scenario(long seed) {
    return scenario(seed, 100);
  }

  String scenario(long seed, int minutes) {
    return String.format(
        Locale.ROOT,
        """
        [night]
        seed = %d
        cadence_s = 3
        latitude_deg = 48
        [noise]
        white_arcsec = 0.35
        [dither]
        every_min = 11
        size_arcsec = %s
        [[run]]
        duration_min = %d
        declination_deg = %s
        hour_angle_h = %s
        [exposures]
        seconds = %s
        %s
        %s
        """,
        seed,
        this == SLOW_SETTLING ? "15" : "6",
        minutes,
        low() ? "-5" : this == FIELD_ROTATION ? "62" : "25",
        low() ? "-3.5" : "-1",
        seconds(),
        camera,
        mount);
  }

  private boolean low() {
    return this == DISPERSION || this == DIFFERENTIAL_REFRACTION;
  }

  private int seconds() {
    return switch (this) {
      case SLOW_SETTLING, JOLTS -> 120;
      case DIFFERENTIAL_REFRACTION, FIELD_ROTATION -> 480;
      default -> 300;
    };
  }
}
