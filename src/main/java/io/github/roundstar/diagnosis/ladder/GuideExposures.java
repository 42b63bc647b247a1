package io.github.roundstar.diagnosis.ladder;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.PlayedAxis;
import io.github.roundstar.results.Planning.GuideExposure;
import io.github.roundstar.results.Replay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * How long guide exposures should last, read off the settings that were played: each length with
 * the gain that suits it best. A length is as good as the one to take where in no axis the
 * intervals of what both save, over the same draws, lie apart.
 */
public final class GuideExposures {
  private GuideExposures() {}

  /** Nothing where no other length could be played. */
  public static Optional<GuideExposure> of(List<Replay> rows, PlayedNight played) {
    List<PlayedAxis> axes =
        played.runs().stream()
            .flatMap(run -> Stream.concat(run.ra().stream(), run.dec().stream()))
            .filter(PlayedAxis::lawKnown)
            .toList();
    if (axes.isEmpty() || rows == null || rows.isEmpty()) {
      return Optional.empty();
    }
    PlayedAxis axis = axes.get(0);
    double cadence =
        rows.stream()
            .filter(Replay::current)
            .mapToDouble(Replay::cadenceSeconds)
            .findFirst()
            .orElseThrow();
    Map<Double, List<Replay>> byCadence = best(rows);
    double taken =
        rows.stream()
            .filter(row -> row.best() && !row.trained())
            .mapToDouble(Replay::cadenceSeconds)
            .findFirst()
            .orElse(cadence);
    List<Double> lengths = new ArrayList<>();
    List<Double> asGood = new ArrayList<>();
    byCadence.forEach(
        (every, own) -> {
          double seconds = axis.exposedSeconds(every / cadence);
          lengths.add(seconds);
          if (every == taken || asGood(own, byCadence.get(taken))) {
            asGood.add(seconds);
          }
        });
    return lengths.size() < 2
        ? Optional.empty()
        : Optional.of(
            new GuideExposure(
                axis.exposedSeconds(taken / cadence),
                axis.exposedSeconds(1),
                asGood.get(0),
                asGood.get(asGood.size() - 1),
                lengths));
  }

  /** Of each time between pulses, the row of either axis that moves the star least. */
  private static Map<Double, List<Replay>> best(List<Replay> rows) {
    Map<Double, List<Replay>> best = new TreeMap<>();
    for (String axis : List.of("ra", "dec")) {
      Map<Double, Replay> own = new TreeMap<>();
      rows.stream()
          .filter(row -> row.axis().equals(axis) && !row.trained())
          .sorted(Comparator.comparingDouble(Replay::predictedMotionRmsArcsec))
          .forEach(row -> own.putIfAbsent(row.cadenceSeconds(), row));
      own.forEach((every, row) -> best.computeIfAbsent(every, e -> new ArrayList<>()).add(row));
    }
    return best;
  }

  private static boolean asGood(List<Replay> one, List<Replay> other) {
    return one.stream()
        .allMatch(
            row ->
                other.stream()
                    .filter(o -> o.axis().equals(row.axis()))
                    .allMatch(o -> overlap(row.lessMotionArcsec(), o.lessMotionArcsec())));
  }

  private static boolean overlap(Estimate one, Estimate other) {
    return one.hi95() >= other.lo95() && other.hi95() >= one.lo95();
  }
}
