package io.github.roundstar.model;

/** Which way the guiding was allowed to push in declination. */
public enum DecDirection {
  BOTH,
  NORTH,
  SOUTH,
  OFF
}
