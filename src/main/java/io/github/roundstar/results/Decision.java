package io.github.roundstar.results;

/** What to do. */
public enum Decision {
  /** Work on the mount's gears or drive. */
  ADJUST_MOUNT,
  /** Turn the mount's two polar adjusters. */
  ADJUST_POLAR_AXIS,
  /** Change a setting of guiding, camera or mount. */
  CHANGE_SETTINGS,
  /** Balance the axes; see to cables and clamps. */
  REBALANCE,
  /** Expose shorter. */
  EXPOSE_SHORTER,
  /** See to telescope, cameras and what holds them; the mount can stay as it is. */
  MEND_OPTICS,
  /** Leave the mount as it is. */
  LEAVE_ALONE,
  /** Record more first. */
  CANNOT_TELL
}
