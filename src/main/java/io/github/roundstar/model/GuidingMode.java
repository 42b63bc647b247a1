package io.github.roundstar.model;

/** What kind of log a run is. */
public enum GuidingMode {
  /** Pulses were sent. */
  GUIDED,
  /**
   * The log has pulse columns and no pulse was sent: the mount was left to itself, its motion is
   * the offset.
   */
  UNGUIDED,
  /** The log has no pulse columns: what the mount did is hidden behind what the guiding did. */
  NO_PULSES
}
