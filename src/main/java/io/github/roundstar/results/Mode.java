package io.github.roundstar.results;

import com.fasterxml.jackson.annotation.JsonProperty;

/** What kind of log a run is. */
public enum Mode {
  /** Pulses were sent. */
  @JsonProperty("guided")
  GUIDED,
  /** The log has pulse columns and no pulse was sent: the mount was left to itself. */
  @JsonProperty("unguided")
  UNGUIDED,
  /** The log has no pulse columns: what the mount did is hidden behind what the guiding did. */
  @JsonProperty("no-pulses")
  NO_PULSES
}
