package io.github.roundstar.dialects;

/**
 * A fact that neither the text nor the numbers of a log tell, so that a careful reader has to ask
 * for it.
 *
 * <p>Which way of the sky counts as positive is not among them: see {@link Truth#raSignTold()}. The
 * sign of pulses is not either, since pulses answer offsets; only lengths without any direction
 * leave it open.
 */
public enum OpenFact {
  /** Which of two offsets is right ascension. */
  WHICH_IS_RA(true),
  /** Which of two pairs of offsets the guider acted upon; no pulses tell. */
  WHICH_OFFSETS(true),
  /** Whether offsets are arcseconds or pixels. */
  UNIT_OF_OFFSETS(true),
  /** Arcseconds per pixel. */
  SCALE(true),
  /** Which way a pulse went: lengths stand without sign, letter or word. */
  PULSE_DIRECTION(true),
  /** Seconds from frame to frame: nothing but a frame counter. */
  CADENCE(true),
  /**
   * The turn of the camera; pulses show it to a few degrees, so a reader who says so is right as
   * well.
   */
  CAMERA_ANGLE(true),
  /** Where the star should have been; figures about the mean do not need it. */
  SET_POINT(false),
  /** The zone of the log's clock. */
  CLOCK_ZONE(false),
  /** The day of the night. */
  DATE(false),
  /** Whether 03/04 is a day in March or in April. */
  DATE_ORDER(false);

  private final boolean changesFigures;

  OpenFact(boolean changesFigures) {
    this.changesFigures = changesFigures;
  }

  /**
   * Whether another answer gives other figures of guiding (scatter in arcsec, drift per minute),
   * rather than only another date or an unknown mean.
   */
  public boolean changesFigures() {
    return changesFigures;
  }
}
