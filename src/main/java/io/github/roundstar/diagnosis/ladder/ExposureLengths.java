package io.github.roundstar.diagnosis.ladder;

import io.github.roundstar.diagnosis.exposures.FieldTurn;
import io.github.roundstar.diagnosis.exposures.Units;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.results.LongestExposure;
import io.github.roundstar.results.LongestExposure.Length;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Step;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;

/**
 * How long exposures may last: every draw of the night is judged in windows of many lengths, from
 * the present length up while enough of them stay round, or down until enough do. A draw's answer
 * lies between the last length that is round enough and the first that is not; its middle where a
 * line through both shares crosses the one that is needed, against the logarithm of the length.
 */
public final class ExposureLengths {
  /** Lengths that people set [s]. */
  private static final double[] USUAL_SECONDS = {
    5, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 300, 420, 600, 900, 1200, 1800, 2700, 3600, 5400
  };

  /** Fewer windows than that tell nothing of nine in ten. */
  private static final int FEWEST_WINDOWS = 4;

  /** A stretch that is shorter than this share of its run was ended by a dither. */
  private static final double WHOLE_RUN = 0.8;

  /** Share of the draws on either side of an interval. */
  private static final double OUTSIDE = 0.025;

  private ExposureLengths() {}

  /**
   * Plays all lengths.
   *
   * @param night its figures
   * @param steps what is recommended; empty where nothing is
   */
  public static LongestExposure of(
      NightResult night,
      PlayedNight played,
      Equipment equipment,
      Optional<FieldTurn> turn,
      List<Step> steps) {
    Units present = played.units();
    List<Units> lengths = lengths(present, equipment, turn);
    int now = lengths.indexOf(present);
    double share = Ladder.SHARE_ROUND;
    List<Treatment> recommended = recommended(night, played, steps);
    return new LongestExposure(
        share,
        equipment.limits().elongation(),
        lengths.get(0).seconds(),
        lengths.get(lengths.size() - 1).seconds(),
        because(present),
        length(played.longest(Playing.AS_IT_WAS, lengths, now, share)),
        recommended.isEmpty()
            ? null
            : length(
                played.longest(
                    Treatment.all(Playing.AS_IT_WAS, recommended), lengths, now, share)));
  }

  private static List<Treatment> recommended(
      NightResult night, PlayedNight played, List<Step> steps) {
    if (steps.isEmpty()) {
      return List.of();
    }
    return new Treatments(night, played.runs(), played.units())
        .coded(steps.stream().map(Step::cure).toList());
  }

  private static List<Units> lengths(Units present, Equipment equipment, Optional<FieldTurn> turn) {
    TreeSet<Double> seconds = new TreeSet<>();
    Arrays.stream(USUAL_SECONDS).forEach(seconds::add);
    seconds.add(present.seconds());
    List<Units> lengths = new ArrayList<>();
    for (double length : seconds) {
      Units units = present.ofLength(length, equipment, turn);
      if (units == present || units.size() >= FEWEST_WINDOWS) {
        lengths.add(units);
      }
    }
    return lengths;
  }

  private static String because(Units present) {
    return present.longestCalmSeconds() < WHOLE_RUN * present.longestRunSeconds()
        ? "too few stretches between dithers, lost stars and breaks are longer"
        : "too few longer exposures fit into what was recorded";
  }

  /**
   * Where the share of round exposures falls below what is needed.
   *
   * @param stays longest length that stays round enough; 0 where none does [s]
   * @param between where a line through the shares crosses what is needed; 0 where no length is
   *     round enough, infinite where all are [s]
   * @param fails shortest length that is no longer round enough; infinite where all are [s]
   */
  record Crossing(double stays, double between, double fails) {}

  /**
   * The longest of some lengths that stays round.
   *
   * @param seconds lengths, the shortest first [s]
   * @param round share of the exposures of a length that are round
   * @param present where to begin
   * @param share that is needed
   */
  static Crossing longest(double[] seconds, IntToDoubleFunction round, int present, double share) {
    double enough = share - 1e-9;
    int at = present;
    double here = round.applyAsDouble(at);
    if (here >= enough) {
      for (; at + 1 < seconds.length; at++) {
        double next = round.applyAsDouble(at + 1);
        if (next < enough) {
          return crossing(seconds[at], here, seconds[at + 1], next, share);
        }
        here = next;
      }
      return new Crossing(seconds[at], Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }
    for (; at > 0; at--) {
      double before = round.applyAsDouble(at - 1);
      if (before >= enough) {
        return crossing(seconds[at - 1], before, seconds[at], here, share);
      }
      here = before;
    }
    return new Crossing(0, 0, seconds[0]);
  }

  private static Crossing crossing(
      double low, double above, double high, double below, double share) {
    double part = Math.max(0, above - share) / (above - below);
    return new Crossing(low, low * Math.pow(high / low, part), high);
  }

  /** Over the draws: the ends of the interval are lengths that were played. */
  static Length length(List<Crossing> draws) {
    double middle = ordered(draws, Crossing::between)[(draws.size() - 1) / 2];
    int outside = (int) Math.floor(OUTSIDE * (draws.size() - 1));
    double low = ordered(draws, Crossing::stays)[outside];
    double high = ordered(draws, Crossing::fails)[draws.size() - 1 - outside];
    boolean found = middle > 0 && Double.isFinite(middle);
    return new Length(
        found ? Length.FOUND : middle > 0 ? Length.LONGER : Length.SHORTER,
        found ? (Double) middle : null,
        low > 0 ? (Double) low : null,
        Double.isFinite(high) ? (Double) high : null);
  }

  private static double[] ordered(List<Crossing> draws, ToDoubleFunction<Crossing> figure) {
    return draws.stream().mapToDouble(figure).sorted().toArray();
  }
}
