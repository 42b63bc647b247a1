package io.github.roundstar.results;

import java.util.Map;

/**
 * Something that is changed, and what it wins.
 *
 * @param cure which, in a word
 * @param numbers from what to what, the unit in each key
 * @param winsAlone exposures that it wins back by itself
 * @param winsOnTop the same once everything cheaper is done
 * @param lessRmsArcsecAlone how much less the radial RMS of the log would be by it alone [arcsec]
 * @param lessRmsArcsecOnTop the same once everything cheaper is done [arcsec]
 * @param meetsAlone probability that it alone meets the need
 */
public record Cure(
    String cure,
    Map<String, Double> numbers,
    Range winsAlone,
    Range winsOnTop,
    Range lessRmsArcsecAlone,
    Range lessRmsArcsecOnTop,
    double meetsAlone) {
  /** Copies, in the order of the keys' names. */
  public Cure {
    numbers = new java.util.TreeMap<>(numbers);
  }
}
