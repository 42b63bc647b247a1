package io.github.roundstar.model;

/** What became of a frame; only {@link #USED} frames enter the RMS. */
public enum FrameState {
  /** Measured while guiding steadily. */
  USED,
  /** After a dither, before the star had come to rest. */
  SETTLING,
  /** The star was not measured. */
  LOST,
  /** The first frame measured against a new set point. */
  DITHER,
  /** The log says that nothing was guided here. */
  IDLE,
  /** Measured, but not finite or saturated. */
  REJECTED
}
