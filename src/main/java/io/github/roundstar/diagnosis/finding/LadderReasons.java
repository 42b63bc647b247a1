package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Judgement;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;

/** Why figures of the ladder and of the verdict are null. */
final class LadderReasons {
  private LadderReasons() {}

  static List<NotComputed> of(List<Rung> ladder, Verdict verdict) {
    List<NotComputed> reasons = new ArrayList<>();
    List<Rung> rungs = ladder == null ? List.of() : ladder;
    note(reasons, rungs, Rung::reason, "/ladder/*/reason", "the rung has something to change");
    String noCorner = "no corner is known: the sensor or the turn is not";
    note(reasons, rungs, Rung::cornerElongation, "/ladder/*/cornerElongation", noCorner);
    note(reasons, rungs, Rung::alone, "/ladder/*/alone", "only mechanics have single causes");
    List<Rung> alone =
        rungs.stream()
            .filter(rung -> rung.alone() != null)
            .flatMap(rung -> rung.alone().stream())
            .toList();
    note(reasons, alone, Rung::reason, "/ladder/*/alone/*/reason", "it changes something");
    note(reasons, alone, Rung::cornerElongation, "/ladder/*/alone/*/cornerElongation", noCorner);
    note(reasons, alone, Rung::alone, "/ladder/*/alone/*/alone", "it is one by itself");
    if (verdict.rung() == null) {
      reasons.add(new NotComputed("/verdict/rung", "this log cannot tell; see the summary"));
    }
    boolean uncounted =
        Stream.of(
                verdict.mount(),
                verdict.axis(),
                verdict.settings(),
                verdict.sky(),
                verdict.optics())
            .filter(Objects::nonNull)
            .map(Judgement::costs)
            .anyMatch(Objects::isNull);
    if (uncounted) {
      reasons.add(
          new NotComputed(
              "/verdict/*/costs",
              "exposures are counted only where round stars are asked for and the log can tell"));
    }
    return reasons;
  }

  private static void note(
      List<NotComputed> reasons,
      List<Rung> rungs,
      Function<Rung, Object> figure,
      String pointer,
      String because) {
    if (rungs.stream().anyMatch(rung -> figure.apply(rung) == null)) {
      reasons.add(new NotComputed(pointer, because));
    }
  }
}
