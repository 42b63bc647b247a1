package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;

/**
 * Every limit that a finding is judged by, with its reason. Limits are always held against the
 * bound of an interval that makes the finding harder to claim.
 */
public final class Thresholds {
  /** A rung of the ladder that meets the need with this probability does so with little doubt. */
  public static final double SURELY = 0.9;

  /** One that does with less than this is likelier to fall short. */
  public static final double LIKELIER = 0.5;

  /**
   * Cut of the trailing part of the radial RMS that makes a finding come first: a quarter, which is
   * what one sees at a glance in two pictures side by side; common practice, no source.
   */
  static final double FIX_FIRST_CUT = 0.25;

  /**
   * The same cut in arcsec: below it no star image of an amateur site (2 arcsec and more across)
   * changes by more than 3 %; by quadrature of 0.15 arcsec RMS with a standard deviation of 0.85.
   */
  static final double FIX_FIRST_ARCSEC = 0.15;

  /** Share of the exposures that makes a finding come first: one in five. */
  static final double FIX_FIRST_EXPOSURES = 0.20;

  /** Cut, or share of the exposures, worth an evening's work: a tenth; common practice. */
  static final double WORTH_FIXING = 0.10;

  /** Fewest exposures of which a share is taken: of two, one is already half. */
  static final int FEWEST_EXPOSURES = 3;

  /**
   * What one part of the budget may be off: 15 % of itself and 0.01 arcsec^2, to which the budget
   * is proved on simulated nights. Taken as a 95 % half-width beside the figure's own interval.
   */
  static final double BUDGET_RELATIVE = 0.15;

  static final double BUDGET_ARCSEC2 = 0.01;

  /**
   * What the ratio of two replayed RMS may be off beside its interval, which knows the scatter
   * within the night only. The replay is proved to 10 % across settings; two settings of one replay
   * share most of that error, so half of it is taken.
   */
  static final double REPLAY_RATIO = 0.05;

  /** A radial RMS that would fall by less than this share is not held out; nobody would see it. */
  static final double LEAST_WORTH_SAYING = 0.1;

  /** Chance of being noise below which a periodic component is taken as real; common practice. */
  public static final double FALSE_ALARM = 0.01;

  /** Repeatability above which training pays: most of the curve comes back; common practice. */
  static final double TRAINABLE = 0.7;

  /**
   * Effective gains between these are usual; outside them a gain is named as the cause. Common
   * practice, no source; at 0.35 a ramp lags three cadences behind, at 0.85 the loop's noise alone
   * moves the star by 0.86 of the measurement error (g/(2-g), first-order loop).
   */
  static final double LOW_GAIN = 0.35;

  static final double HIGH_GAIN = 0.85;

  /** Gain that is worked towards where the replay does not name a better one; common practice. */
  static final double USUAL_GAIN = 0.6;

  /**
   * Share of each correction, or of each figure, that a wrong set-up spoils: such faults need not
   * trail a star to make every number wrong, so they are levelled by this share with the limits of
   * the trailing part.
   */
  static final double SPOILS_FIRST = FIX_FIRST_CUT;

  static final double SPOILS_WORTH = WORTH_FIXING;

  /**
   * Least factor between measured and declared pulse strength that is called off: guide rates of
   * mounts are off by a few percent without harm; common practice.
   */
  static final double STRENGTH_OFF = 0.10;

  /**
   * Drift in RA that refraction makes, at most, down to 30 degrees of altitude [arcsec/min]:
   * refraction of 58.3 arcsec times the cotangent of the altitude a changes by 58.3 / sin^2 a per
   * radian, the sky turns by 0.004376 radians a minute, and 58.3 * 0.004376 / 0.25 is 1.02. A drift
   * below this is the air's, not the drive's.
   */
  public static final double REFRACTION_RA_ARCSEC_PER_MINUTE = 1.1;

  /**
   * Axis error whose drift in Dec refraction may make, at most, down to 30 degrees of altitude
   * [arcmin]: the same formula along the hour circle, tried over latitudes 25 to 60, all
   * declinations and hour angles, is 0.49 arcsec/min.
   */
  static final double REFRACTION_DEC_ARCMIN = 0.5 / 0.2625;

  /** Drift in Dec per arcmin of axis error, at most [arcsec/min]: 900 arcsec/min in radians. */
  public static final double DRIFT_PER_ARCMIN = 0.2625;

  /** Noise that one axis may have above the other before the air cannot be its only cause. */
  static final double NOISE_RATIO = 1.3;

  /** Share of the mean square from which on the air is said to set the limit: the larger half. */
  static final double AIR_SHARE = 0.5;

  /** Trail in the corner from which on a polar-axis error is worth seeing to [imaging pixels]. */
  static final double CORNER_PIXELS = 0.5;

  /** Shortest log that a verdict is based on [min], and fewest used frames in it. */
  static final double SHORTEST_MINUTES = 20;

  static final int FEWEST_FRAMES = 200;

  /**
   * Turns of the worm that a periodic error needs: three, as for the search itself; common
   * practice.
   */
  static final double WORM_TURNS = 3;

  /** Turn of a worm where the equipment does not tell [s]; common practice. */
  static final double USUAL_WORM_SECONDS = 480;

  /** Fewest dithers whose settling is judged. */
  static final int FEWEST_DITHERS = 3;

  /** The two limits of the trailing part as shares of the mean square: 1 - (1 - cut)^2. */
  static double share(double cut) {
    return 1 - (1 - cut) * (1 - cut);
  }

  /** Cut of an RMS that removing a share of its mean square makes; the lower bound at least 0. */
  static double cut(double share) {
    return 1 - Math.sqrt(1 - Math.max(0, Math.min(1, share)));
  }

  /** Whether an interval lies wholly outside 1 plus or minus {@code allowed}. */
  static boolean off(Estimate ratio, double allowed) {
    return ratio.lo95() > 1 + allowed || ratio.hi95() < 1 - allowed;
  }

  private Thresholds() {}
}
