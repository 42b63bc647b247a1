package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Decision;
import java.util.Locale;

/**
 * What a finding is about. In the order of a careful owner: of two findings that weigh the same,
 * the one that is easier and safer to see to comes first. The polar axis stands before the field
 * rotation that it makes; where images were lost to the turn alone, {@link ByWeight} has it first.
 */
enum FindingCode {
  STUCK_STAR(About.SETTINGS, Decision.CHANGE_SETTINGS, "a false star"),
  LOG_TOO_SHORT(About.SETTINGS, Decision.CANNOT_TELL, "length of the log"),
  CAMERA_ANGLE(About.SETTINGS, Decision.CHANGE_SETTINGS, "camera angle"),
  PIXEL_SCALE(About.SETTINGS, Decision.CHANGE_SETTINGS, "pixel scale"),
  PULSE_STRENGTH(About.SETTINGS, Decision.CHANGE_SETTINGS, "strength of pulses"),
  UNDER_CORRECTION(About.SETTINGS, Decision.CHANGE_SETTINGS, "corrections too weak"),
  OVER_CORRECTION(About.SETTINGS, Decision.CHANGE_SETTINGS, "corrections too strong"),
  SLOW_SETTLING(About.SETTINGS, Decision.CHANGE_SETTINGS, "settling after dithers"),
  TRACKING_RATE(About.SETTINGS, Decision.CHANGE_SETTINGS, "tracking rate"),
  SEEING_BOUND(About.SKY, Decision.LEAVE_ALONE, "the air"),
  CLOUDS(About.SKY, Decision.LEAVE_ALONE, "clouds"),
  AXIS_IMBALANCE(About.MOUNT, Decision.REBALANCE, "balance"),
  JOLTS(About.MOUNT, Decision.REBALANCE, "jolts"),
  POLAR_AXIS(About.MOUNT, Decision.ADJUST_POLAR_AXIS, "polar axis"),
  FIELD_ROTATION(About.MOUNT, Decision.ADJUST_POLAR_AXIS, "field rotation"),
  DIFFERENTIAL_REFRACTION(About.SKY, Decision.LEAVE_ALONE, "differential refraction"),
  ATMOSPHERIC_DISPERSION(About.SKY, Decision.LEAVE_ALONE, "atmospheric dispersion"),
  OPTICS(About.OPTICS, Decision.LEAVE_ALONE, "optics and focus"),
  DIFFERENTIAL_FLEXURE(About.OPTICS, Decision.LEAVE_ALONE, "differential flexure"),
  PERIODIC_ERROR(About.MOUNT, Decision.ADJUST_MOUNT, "periodic error"),
  DEC_BACKLASH(About.MOUNT, Decision.ADJUST_MOUNT, "backlash in Dec");

  /** What part of the evening it belongs to. */
  enum About {
    MOUNT,
    SKY,
    SETTINGS,
    /** Telescope and cameras: neither mount nor sky nor settings; the mount stays as it is. */
    OPTICS
  }

  private final About about;
  private final Decision decision;
  private final String subject;

  FindingCode(About about, Decision decision, String subject) {
    this.about = about;
    this.decision = decision;
    this.subject = subject;
  }

  About about() {
    return about;
  }

  /** What is decided when this finding leads. */
  Decision decision() {
    return decision;
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
