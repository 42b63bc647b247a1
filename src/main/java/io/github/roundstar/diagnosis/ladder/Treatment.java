package io.github.roundstar.diagnosis.ladder;

import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * A cure that can be tried on a night.
 *
 * @param code which
 * @param rung where it stands
 * @param numbers from what to what, the unit in each key
 * @param how what it changes of a playing
 */
record Treatment(
    String code, String rung, Map<String, Double> numbers, UnaryOperator<Playing> how) {

  /** A playing with all of these, one after the other. */
  static Playing all(Playing from, List<Treatment> treatments) {
    Playing to = from;
    for (Treatment treatment : treatments) {
      to = treatment.how().apply(to);
    }
    return to;
  }
}
