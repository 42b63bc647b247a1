package io.github.roundstar.report.chart;

import io.github.roundstar.model.SkySense;

/**
 * Which way is which in a chart. A log may tell an axis's two ways apart without saying which of
 * them is east, or north; then no chart may name one.
 */
final class Ways {
  /** Why no way is named; short enough for the head of an axis. */
  private static final String UNTOLD = " (the log does not tell which way is ";

  private final SkySense sense;

  Ways(SkySense sense) {
    this.sense = sense;
  }

  /** What the axis shows, with the direction that is up: "RA offset, arcsec (east up)". */
  String up(Ink axis, String what) {
    return known(axis) ? what + " (" + name(axis) + " up)" : untold(axis, what);
  }

  /** The same of a horizontal axis of right ascension, as on the sky. */
  String left(String what) {
    return sense.ra() ? what + " (east left)" : untold(Ink.RA, what);
  }

  private static String untold(Ink axis, String what) {
    return what + UNTOLD + name(axis) + ")";
  }

  /** For text alternatives: "east up", or that one way is up and why it has no name. */
  String upInWords(Ink axis) {
    return known(axis)
        ? name(axis) + " up"
        : "one way up, the other down: the log does not tell which of them is " + name(axis);
  }

  boolean known(Ink axis) {
    return axis == Ink.RA ? sense.ra() : sense.dec();
  }

  boolean allKnown() {
    return sense.known();
  }

  private static String name(Ink axis) {
    return axis == Ink.RA ? "east" : "north";
  }
}
