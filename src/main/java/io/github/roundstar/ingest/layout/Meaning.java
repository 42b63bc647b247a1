package io.github.roundstar.ingest.layout;

import java.util.Locale;
import java.util.Set;

/** What a column may mean. */
public enum Meaning {
  /** Seconds, clock, or date and time, as {@link TimeForm} says. */
  TIME,
  /** The date that belongs to a clock time. */
  DATE,
  /** The half of the day, am or pm, of a clock time whose field it does not share. */
  DAY_HALF,
  /** Number of the run. */
  RUN,
  /** Offset along right ascension, on the sky. */
  RA_OFFSET("px", "arcsec", "mas", "arcmin"),
  /** Offset along declination. */
  DEC_OFFSET("px", "arcsec", "mas", "arcmin"),
  /** Offset along the camera's rows. */
  X_OFFSET("px", "arcsec", "mas", "arcmin"),
  /** Offset along the camera's columns. */
  Y_OFFSET("px", "arcsec", "mas", "arcmin"),
  /** Place of the star along the camera's rows; less the set point it is an offset. */
  X_PLACE("px", "arcsec", "mas", "arcmin"),
  /** Place of the star along the camera's columns. */
  Y_PLACE("px", "arcsec", "mas", "arcmin"),
  /** The set point along the camera's rows; without it, the place right after each move. */
  X_SET("px", "arcsec", "mas", "arcmin"),
  /** The set point along the camera's columns. */
  Y_SET("px", "arcsec", "mas", "arcmin"),
  /** Pulse in right ascension, signed or with a letter E or W in the field. */
  RA_PULSE("ms", "s", "us", "px", "arcsec", "mas"),
  /** Pulse in declination, signed or with a letter N or S in the field. */
  DEC_PULSE("ms", "s", "us", "px", "arcsec", "mas"),
  /** Length of a pulse east. */
  EAST_PULSE("ms", "s", "us", "px", "arcsec", "mas"),
  /** Length of a pulse west. */
  WEST_PULSE("ms", "s", "us", "px", "arcsec", "mas"),
  /** Length of a pulse north. */
  NORTH_PULSE("ms", "s", "us", "px", "arcsec", "mas"),
  /** Length of a pulse south. */
  SOUTH_PULSE("ms", "s", "us", "px", "arcsec", "mas"),
  /** Letter E or W of the pulse whose length stands in the RA pulse column. */
  RA_LETTER,
  /** Letter N or S of the pulse whose length stands in the Dec pulse column. */
  DEC_LETTER,
  /** Code for east or west of the offset whose size stands in the RA offset column. */
  RA_OFFSET_LETTER,
  /** Code for north or south of the offset whose size stands in the Dec offset column. */
  DEC_OFFSET_LETTER,
  /** Shift of the set point along right ascension. */
  RA_DITHER("px", "arcsec", "mas", "arcmin"),
  /** Shift of the set point along declination. */
  DEC_DITHER("px", "arcsec", "mas", "arcmin"),
  /** Signal to noise of the star. */
  SNR,
  /** Flux of the star. */
  FLUX,
  /** A word or number that the events explain. */
  EVENT,
  /** Anything but no, false or 0: the first frame against a new set point. */
  DITHER_FLAG,
  /** Anything but no, false or 0: the star is on its way to a new set point. */
  SETTLING_FLAG,
  /** Anything but no, false or 0: the star was not measured. */
  LOST_FLAG,
  /** Nothing that matters. */
  NOTHING;

  private final Set<String> units;

  Meaning(String... units) {
    this.units = Set.of(units);
  }

  /** The units it may have; empty where none is needed. */
  public Set<String> units() {
    return units;
  }

  /** The word for it in a layout file. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether a positive value needs a direction. */
  public boolean isSigned() {
    return switch (this) {
      case RA_OFFSET, DEC_OFFSET, RA_PULSE, DEC_PULSE, RA_DITHER, DEC_DITHER -> true;
      default -> false;
    };
  }

  /** Whether it lies along the camera's axes. */
  public boolean isOfCamera() {
    return switch (this) {
      case X_OFFSET, Y_OFFSET, X_PLACE, Y_PLACE, X_SET, Y_SET -> true;
      default -> false;
    };
  }

  /** Whether it is a pulse or part of one. */
  public boolean isPulse() {
    return units.contains("ms");
  }

  /** Whether it says yes or no. */
  public boolean isFlag() {
    return this == DITHER_FLAG || this == SETTLING_FLAG || this == LOST_FLAG;
  }

  /** Whether it is the direction of a length. */
  public boolean isLetter() {
    return switch (this) {
      case RA_LETTER, DEC_LETTER, RA_OFFSET_LETTER, DEC_OFFSET_LETTER -> true;
      default -> false;
    };
  }

  /** Whether it belongs to declination. */
  public boolean isDec() {
    return switch (this) {
      case DEC_OFFSET,
          DEC_PULSE,
          NORTH_PULSE,
          SOUTH_PULSE,
          DEC_LETTER,
          DEC_OFFSET_LETTER,
          DEC_DITHER ->
          true;
      default -> false;
    };
  }
}
