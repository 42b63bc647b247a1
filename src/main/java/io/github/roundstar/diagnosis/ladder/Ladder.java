package io.github.roundstar.diagnosis.ladder;

import io.github.roundstar.diagnosis.exposures.FieldTurn;
import io.github.roundstar.diagnosis.exposures.Units;
import io.github.roundstar.diagnosis.finding.Thresholds;
import io.github.roundstar.diagnosis.ladder.PlayedNight.Played;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.results.Cure;
import io.github.roundstar.results.Need;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Promise;
import io.github.roundstar.results.Range;
import io.github.roundstar.results.Rung;
import io.github.roundstar.signal.Quantile;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * The ladder of a night: every cure played, the cheapest and least risky first, each rung on top of
 * those below it.
 */
public final class Ladder {
  /** One exposure in ten may be lost to a gust or a cloud; common practice, no source. */
  static final double SHARE_ROUND = 0.9;

  /** Exposures are cut by so much at most, and not below; common practice, no source. */
  private static final double[] SHORTER = {1.5, 2, 3, 4, 6, 10};

  private static final double SHORTEST_SECONDS = 15;

  /** A setting that takes less off the elongation beyond 1 is not worth a word; common practice. */
  private static final double VISIBLE = 0.1;

  /** An RMS is told in hundredths [arcsec]. */
  private static final double LEAST_ARCSEC = 0.01;

  /** Lengths that people set [s]. */
  private static final double[] USUAL_SECONDS = {
    5, 10, 15, 20, 30, 45, 60, 90, 120, 150, 180, 240, 300, 360, 420, 480, 600, 720, 900, 1200
  };

  private static final String SHORTER_EXPOSURE = "exposure-length";

  static final List<String> CLIMBED =
      List.of(Rung.SETTINGS, Rung.ALIGNMENT_BALANCE, Rung.TRAINING, Rung.MECHANICS);

  private final NightResult night;
  private final Equipment equipment;
  private final Optional<FieldTurn> turn;
  private final Need need;
  private final Treatments treatments;
  private final PlayedNight played;
  private final Map<String, Playing> below = new LinkedHashMap<>();
  private final Map<String, Playing> at = new LinkedHashMap<>();
  private final Map<Playing, List<Played>> ways = new LinkedHashMap<>();
  private Map<Units, Map<Playing, List<Played>>> ofLength = Map.of();

  private Ladder(
      NightResult night, PlayedNight played, Equipment equipment, Optional<FieldTurn> turn) {
    this.night = night;
    this.equipment = equipment;
    this.turn = turn;
    this.need = need(equipment);
    this.treatments = new Treatments(night, played.runs(), played.units());
    this.played = played;
  }

  /** What is asked: the user's limit where one is set, else round stars. */
  public static Need need(Equipment equipment) {
    if (equipment.limits().rmsArcsec().isPresent()) {
      return new Need(Need.RADIAL_RMS, equipment.limits().rmsArcsec().getAsDouble(), "user", 1);
    }
    return new Need(
        Need.ELONGATION,
        equipment.limits().elongation(),
        equipment.limits().usersElongation() ? "user" : "tool",
        SHARE_ROUND);
  }

  /**
   * Plays a night again.
   *
   * @param night its figures
   * @param played its runs and what is judged
   * @param turn how the field turns, where that is known
   * @return the rungs; none where there is nothing to judge
   */
  public static List<Rung> of(
      NightResult night, PlayedNight played, Equipment equipment, Optional<FieldTurn> turn) {
    return played.units().size() == 0
        ? List.of()
        : new Ladder(night, played, equipment, turn).rungs();
  }

  /**
   * What some cures bring together, and nothing else: read off the ladder where a rung is made of
   * just these, else played.
   *
   * @param night its figures, with its ladder
   * @param rung the rung that the cures lead to
   */
  public static Promise promise(
      NightResult night,
      PlayedNight played,
      Equipment equipment,
      Optional<FieldTurn> turn,
      String rung,
      List<Cure> cures) {
    return new Ladder(night, played, equipment, turn)
        .promise(night.rung(rung).orElseThrow(), cures);
  }

  private Promise promise(Rung top, List<Cure> cures) {
    List<String> codes = cures.stream().map(Cure::cure).toList();
    if (codes.equals(climbedTo(top))) {
      return Promise.of(top, cures);
    }
    Playing playing = Treatment.all(Playing.AS_IT_WAS, treatments.coded(codes));
    Optional<Units> cut =
        cures.stream()
            .filter(cure -> cure.cure().equals(SHORTER_EXPOSURE))
            .map(cure -> played.units().cut(cure.numbers().get("toSeconds"), equipment, turn))
            .findFirst();
    PlayedNight.Results results =
        played.play(
            Set.of(playing), cut.map(units -> Map.of(playing, List.of(units))).orElse(Map.of()));
    List<Played> way =
        cut.isPresent()
            ? results.ofLength().get(cut.get()).get(playing)
            : results.ways().get(playing);
    Units units = cut.orElse(played.units());
    return Promise.of(rung(top.rung(), true, null, List.of(), units, way, null), cures);
  }

  /** Everything that is changed up to a rung. */
  private List<String> climbedTo(Rung top) {
    if (top.rung().equals(Rung.SHORTER_EXPOSURES)) {
      return top.cures().stream().map(Cure::cure).toList();
    }
    return CLIMBED.subList(0, CLIMBED.indexOf(top.rung()) + 1).stream()
        .flatMap(rung -> night.rung(rung).orElseThrow().cures().stream())
        .map(Cure::cure)
        .toList();
  }

  private List<Rung> rungs() {
    play(Set.of(Playing.AS_IT_WAS));
    Playing climbed = Playing.AS_IT_WAS;
    Set<Playing> playings = new LinkedHashSet<>();
    for (String rung : CLIMBED) {
      below.put(rung, climbed);
      keepWhatMatters(rung, climbed);
      List<Treatment> own = treatments.of(rung);
      climbed = Treatment.all(climbed, own);
      at.put(rung, climbed);
      playings.add(climbed);
      playings.add(Treatment.all(Playing.AS_IT_WAS, own));
      for (Treatment treatment : own) {
        playings.add(treatment.how().apply(Playing.AS_IT_WAS));
        playings.add(treatment.how().apply(below.get(rung)));
      }
    }
    at.put(Rung.LOOP_LIMIT, climbed.atTheLoopsLimit());
    at.put(Rung.AIR_LIMIT, Playing.perfect());
    playings.add(at.get(Rung.LOOP_LIMIT));
    playings.add(at.get(Rung.AIR_LIMIT));
    playings.removeAll(ways.keySet());
    List<Units> shorter = shorter();
    Map<Playing, List<Units>> cuts = new LinkedHashMap<>();
    if (!shorter.isEmpty()) {
      cuts.put(Playing.AS_IT_WAS, shorter);
      cuts.put(at.get(Rung.ALIGNMENT_BALANCE), shorter);
    }
    PlayedNight.Results results = played.play(playings, cuts);
    ways.putAll(results.ways());
    ofLength = results.ofLength();
    List<Rung> rungs = new ArrayList<>();
    rungs.add(
        rung(
            Rung.AS_IT_WAS,
            true,
            null,
            List.of(),
            played.units(),
            ways.get(Playing.AS_IT_WAS),
            null));
    rungs.add(climbed(Rung.SETTINGS));
    rungs.add(climbed(Rung.ALIGNMENT_BALANCE));
    rungs.add(shorterExposures(shorter));
    rungs.add(climbed(Rung.TRAINING));
    rungs.add(climbed(Rung.MECHANICS));
    rungs.add(limit(Rung.LOOP_LIMIT));
    rungs.add(limit(Rung.AIR_LIMIT));
    return rungs;
  }

  private void play(Set<Playing> playings) {
    Set<Playing> open = new LinkedHashSet<>(playings);
    open.removeAll(ways.keySet());
    if (!open.isEmpty()) {
      ways.putAll(played.play(open, Map.of()).ways());
    }
  }

  /**
   * Of what a rung offers, what the others of it do not do as well; the most trouble is tried to be
   * left out first.
   */
  private void keepWhatMatters(String rung, Playing cheaper) {
    List<Treatment> own = new ArrayList<>(treatments.of(rung));
    List<Treatment> kept = new ArrayList<>(own);
    Collections.reverse(own);
    for (Treatment treatment : own) {
      List<Treatment> others = kept.stream().filter(t -> t != treatment).toList();
      Playing with = Treatment.all(cheaper, kept);
      Playing without = Treatment.all(cheaper, others);
      play(Set.of(with, without));
      if (!matters(ways.get(without), ways.get(with))) {
        kept.remove(treatment);
        treatments.leaveOut(treatment);
      }
    }
  }

  /** Whether one way makes stars visibly rounder than the other, or the RMS asked for smaller. */
  private boolean matters(List<Played> before, List<Played> after) {
    if (!need.ofStars()) {
      Range less = gain(after, before, Played::loggedArcsec);
      return less.low() > 0 && less.value() >= LEAST_ARCSEC;
    }
    double longer = range(before, p -> p.judged().middleElongation()).value() - 1;
    double then = range(after, p -> p.judged().middleElongation()).value() - 1;
    return gain(before, after, p -> p.judged().round()).value() >= 1
        || then <= (1 - VISIBLE) * longer;
  }

  private List<Units> shorter() {
    double now = played.units().seconds();
    List<Units> shorter = new ArrayList<>();
    boolean wanted =
        need.ofStars()
            && meets(ways.get(Playing.AS_IT_WAS), played.units().size()) < Thresholds.SURELY;
    double last = now;
    for (double factor : SHORTER) {
      double seconds = usual(now / factor);
      if (wanted && seconds >= SHORTEST_SECONDS && seconds < last) {
        Units cut = played.units().cut(seconds, equipment, turn);
        if (cut.size() > 0) {
          shorter.add(cut);
        }
        last = seconds;
      }
    }
    return shorter;
  }

  /** The longest usual length that is no longer than this. */
  private static double usual(double seconds) {
    double best = 0;
    for (double usual : USUAL_SECONDS) {
      best = usual <= seconds + 1e-9 ? usual : best;
    }
    return best;
  }

  private Rung climbed(String rung) {
    List<Treatment> own = treatments.of(rung);
    List<Played> way = ways.get(at.get(rung));
    return rung(
        rung,
        !own.isEmpty(),
        own.isEmpty() ? treatments.reason(rung) : null,
        own.stream().map(this::cure).toList(),
        played.units(),
        way,
        rung.equals(Rung.MECHANICS) ? alone(own) : null);
  }

  private List<Rung> alone(List<Treatment> treatments) {
    return treatments.stream()
        .map(
            treatment ->
                rung(
                    Rung.MECHANICS,
                    true,
                    null,
                    List.of(cure(treatment)),
                    played.units(),
                    ways.get(treatment.how().apply(Playing.AS_IT_WAS)),
                    null))
        .toList();
  }

  private Rung limit(String rung) {
    List<Played> way = ways.get(at.get(rung));
    // A limit that was bettered is none: the model of this night's motion is too coarse for it.
    boolean bettered = gain(way, ways.get(Playing.AS_IT_WAS), p -> p.judged().round()).value() > 0;
    return rung(
        rung,
        !bettered,
        bettered
            ? "the night as it was did better: its motion is not understood well enough"
            : null,
        List.of(),
        played.units(),
        way,
        null);
  }

  /** The longest exposures that stay round as things are, else with settings and axis set right. */
  private Rung shorterExposures(List<Units> shorter) {
    Playing cheaper = at.get(Rung.ALIGNMENT_BALANCE);
    for (double enough : new double[] {Thresholds.SURELY, Thresholds.LIKELIER}) {
      for (Playing way : List.of(Playing.AS_IT_WAS, cheaper)) {
        for (Units units : shorter) {
          List<Played> cut = ofLength.get(units).get(way);
          if (meets(cut, units.size()) >= enough) {
            return shorterExposures(way, units, cut);
          }
        }
      }
    }
    return rung(
        Rung.SHORTER_EXPOSURES,
        false,
        !need.ofStars()
            ? "an RMS does not fall with the exposure"
            : shorter.isEmpty()
                ? "exposures are round as long as they are"
                : "no shorter exposure is likely round either",
        List.of(),
        played.units(),
        ways.get(cheaper),
        null);
  }

  private Rung shorterExposures(Playing way, Units units, List<Played> cut) {
    Range share = wonShare(cut, units.size());
    List<Cure> cures = new ArrayList<>();
    if (way != Playing.AS_IT_WAS) {
      treatments.of(Rung.SETTINGS).forEach(t -> cures.add(cure(t)));
      treatments.of(Rung.ALIGNMENT_BALANCE).forEach(t -> cures.add(cure(t)));
    }
    cures.add(
        new Cure(
            SHORTER_EXPOSURE,
            Map.of("fromSeconds", played.units().seconds(), "toSeconds", units.seconds()),
            share,
            share,
            new Range(0, 0, 0),
            new Range(0, 0, 0),
            meets(cut, units.size())));
    return rung(Rung.SHORTER_EXPOSURES, true, null, cures, units, cut, null);
  }

  /** Of today's units, how many more would be round by the share of the others. */
  private Range wonShare(List<Played> cut, int units) {
    int all = played.units().size();
    List<Played> now = ways.get(Playing.AS_IT_WAS);
    double[] won = new double[cut.size()];
    for (int d = 0; d < won.length; d++) {
      won[d] =
          (double) all * cut.get(d).judged().round() / Math.max(1, units)
              - now.get(d).judged().round();
    }
    return range(won);
  }

  private Cure cure(Treatment treatment) {
    List<Played> nothing = ways.get(Playing.AS_IT_WAS);
    List<Played> alone = ways.get(treatment.how().apply(Playing.AS_IT_WAS));
    Playing cheaper = below.get(treatment.rung());
    List<Played> under = ways.get(cheaper);
    List<Played> onTop = ways.get(treatment.how().apply(cheaper));
    return new Cure(
        treatment.code(),
        treatment.numbers(),
        gain(nothing, alone, p -> p.judged().round()),
        gain(under, onTop, p -> p.judged().round()),
        gain(alone, nothing, Played::loggedArcsec),
        gain(onTop, under, Played::loggedArcsec),
        meets(alone, played.units().size()));
  }

  private static Range gain(
      List<Played> before, List<Played> after, ToDoubleFunction<Played> figure) {
    double[] gains = new double[before.size()];
    for (int d = 0; d < gains.length; d++) {
      gains[d] = figure.applyAsDouble(after.get(d)) - figure.applyAsDouble(before.get(d));
    }
    return range(gains);
  }

  private Rung rung(
      String name,
      boolean offered,
      String reason,
      List<Cure> cures,
      Units units,
      List<Played> way,
      List<Rung> alone) {
    boolean corner = way.stream().noneMatch(p -> Double.isNaN(p.judged().cornerElongation()));
    return new Rung(
        name,
        offered,
        reason,
        cures,
        units.size(),
        units.areListed() ? "exposures" : "windows",
        units.seconds(),
        range(way, p -> p.judged().round()),
        range(way, Played::radialArcsec),
        range(way, p -> Math.max(p.raArcsec(), p.decArcsec())),
        range(way, Played::loggedArcsec),
        range(way, p -> p.judged().middleElongation()),
        corner ? range(way, p -> p.judged().cornerElongation()) : null,
        meets(way, units.size()),
        alone);
  }

  /** Probability that the need is met, from so many draws. */
  private double meets(List<Played> way, int units) {
    long met =
        way.stream()
            .filter(
                p ->
                    need.ofStars()
                        ? p.judged().round() >= need.round(units)
                        : p.loggedArcsec() <= need.limit())
            .count();
    return (met + 0.5) / (way.size() + 1);
  }

  private static Range range(List<Played> way, ToDoubleFunction<Played> figure) {
    return range(way.stream().mapToDouble(figure).toArray());
  }

  private static Range range(double[] values) {
    return new Range(
        Quantile.median(values), Quantile.of(values, 0.025), Quantile.of(values, 0.975));
  }
}
