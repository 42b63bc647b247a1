package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Cure;
import io.github.roundstar.results.Need;
import io.github.roundstar.results.Range;
import io.github.roundstar.results.Rung;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A ladder written by hand: 24 exposures, of which 23 have to be round. Every figure is certain; a
 * rung meets the need where its count does.
 */
final class MadeUpLadder {
  static final int UNITS = 24;
  private static final List<String> ORDER =
      List.of(
          Rung.AS_IT_WAS,
          Rung.SETTINGS,
          Rung.ALIGNMENT_BALANCE,
          Rung.SHORTER_EXPOSURES,
          Rung.TRAINING,
          Rung.MECHANICS,
          Rung.LOOP_LIMIT,
          Rung.AIR_LIMIT);

  private final Map<String, Integer> round = new LinkedHashMap<>();
  private final Map<String, List<Cure>> cures = new LinkedHashMap<>();
  private final int was;

  private MadeUpLadder(int was) {
    this.was = was;
    round.put(Rung.AS_IT_WAS, was);
  }

  /** So many were round, and nothing is offered. */
  static MadeUpLadder was(int round) {
    return new MadeUpLadder(round);
  }

  /** A cure that alone brings so many, and with it its rung so many. */
  MadeUpLadder cure(String rung, String cure, Map<String, Double> numbers, int alone, int climbed) {
    double wins = alone - was;
    int before = below(rung);
    cures
        .computeIfAbsent(rung, key -> new ArrayList<>())
        .add(
            new Cure(
                cure,
                numbers,
                exact(wins),
                exact(climbed - before),
                exact(0.02 * wins),
                exact(0.02 * (climbed - before)),
                meets(alone)));
    round.put(rung, climbed);
    return this;
  }

  MadeUpLadder gain(String axis, double from, double to, int then) {
    return cure(Rung.SETTINGS, axis + "-gain", Map.of("fromGain", from, "toGain", to), then, then);
  }

  private int below(String rung) {
    int last = was;
    for (String name : ORDER) {
      if (name.equals(rung)) {
        return last;
      }
      last = name.equals(Rung.SHORTER_EXPOSURES) ? last : round.getOrDefault(name, last);
    }
    return last;
  }

  static Need need() {
    return new Need(Need.ELONGATION, 1.15, "tool", 0.95);
  }

  private static double meets(int round) {
    return round >= need().round(UNITS) ? 0.99 : 0.01;
  }

  private static Range exact(double value) {
    return new Range(value, value, value);
  }

  List<Rung> rungs() {
    List<Rung> rungs = new ArrayList<>();
    for (String name : ORDER) {
      boolean limit = name.equals(Rung.LOOP_LIMIT) || name.equals(Rung.AIR_LIMIT);
      List<Cure> own = cures.getOrDefault(name, List.of());
      boolean offered = limit || name.equals(Rung.AS_IT_WAS) || !own.isEmpty();
      int count = limit ? UNITS : round.getOrDefault(name, below(name));
      rungs.add(
          new Rung(
              name,
              offered,
              offered ? null : "nothing on it would change anything",
              own,
              UNITS,
              "exposures",
              300,
              exact(count),
              exact(0.5),
              exact(0.4),
              exact(1 - 0.02 * count),
              exact(1.1),
              null,
              meets(count),
              null));
    }
    return rungs;
  }
}
