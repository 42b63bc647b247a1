package io.github.roundstar.diagnosis.finding;

import java.util.Locale;

/**
 * What a finding is about. In the order of a careful owner: of two findings that weigh the same,
 * the one that is easier and safer to see to comes first. The polar axis stands before the field
 * rotation that it makes; where images were lost to the turn alone, {@link ByWeight} has it first.
 */
enum FindingCode {
  STUCK_STAR(About.SETTINGS, "a false star"),
  LOG_TOO_SHORT(About.SETTINGS, "length of the log"),
  CAMERA_ANGLE(About.SETTINGS, "camera angle"),
  PIXEL_SCALE(About.SETTINGS, "pixel scale"),
  PULSE_STRENGTH(About.SETTINGS, "strength of pulses"),
  UNDER_CORRECTION(About.SETTINGS, "corrections too weak"),
  OVER_CORRECTION(About.SETTINGS, "corrections too strong"),
  SLOW_SETTLING(About.SETTINGS, "settling after dithers"),
  TRACKING_RATE(About.SETTINGS, "tracking rate"),
  SEEING_BOUND(About.SKY, "the air"),
  CLOUDS(About.SKY, "clouds"),
  AXIS_IMBALANCE(About.AXIS, "balance"),
  JOLTS(About.MOUNT, "jolts"),
  POLAR_AXIS(About.AXIS, "polar axis"),
  FIELD_ROTATION(About.AXIS, "field rotation"),
  DIFFERENTIAL_REFRACTION(About.SKY, "differential refraction"),
  ATMOSPHERIC_DISPERSION(About.SKY, "atmospheric dispersion"),
  OPTICS(About.OPTICS, "optics and focus"),
  DIFFERENTIAL_FLEXURE(About.OPTICS, "differential flexure"),
  PERIODIC_ERROR(About.MOUNT, "periodic error"),
  DEC_BACKLASH(About.MOUNT, "backlash in Dec");

  /** What part of the evening it belongs to. */
  enum About {
    MOUNT,
    /** Polar axis and balance. */
    AXIS,
    SKY,
    SETTINGS,
    /** Telescope and cameras: neither mount nor sky nor settings; the mount stays as it is. */
    OPTICS
  }

  private final About about;
  private final String subject;

  FindingCode(About about, String subject) {
    this.about = about;
    this.subject = subject;
  }

  About about() {
    return about;
  }

  /** In words, as the subject of a sentence. */
  String subject() {
    return subject;
  }

  /** As the result and the causes of exposures spell it. */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static FindingCode of(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
  }
}
