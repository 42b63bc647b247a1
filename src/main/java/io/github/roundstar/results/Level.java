package io.github.roundstar.results;

/** How much a finding matters, the weightiest first. */
public enum Level {
  /**
   * Removing it cuts the trailing part of the radial RMS by a quarter and 0.15 arcsec at least, or
   * rescues a fifth of the exposures.
   */
  FIX_FIRST,
  /** Removing it cuts the trailing part, or the exposures lost, by a tenth at least. */
  WORTH_FIXING,
  /** Detected, but smaller or not surely larger. */
  WATCH,
  /** Surely less than a tenth. */
  FINE,
  /** The log does not tell. */
  CANNOT_TELL;

  /** Whether this one is as weighty as {@code other} or more so. */
  public boolean atLeast(Level other) {
    return compareTo(other) <= 0;
  }
}
