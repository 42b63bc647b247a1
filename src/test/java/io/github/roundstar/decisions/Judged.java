package io.github.roundstar.decisions;

import io.github.roundstar.decisions.TrueLadder.Count;
import io.github.roundstar.worlds.Cure;
import java.util.List;
import java.util.Optional;

/**
 * What was decided on a night, against what is true of it.
 *
 * @param decided rung that the tool decided on; nothing where it cannot tell
 * @param truth cheapest rung whose best cure meets the need
 * @param truthCount what that cure comes to
 * @param named what the cure that the tool named comes to when it is played; nothing without one
 * @param grade how good that is
 */
record Judged(
    Optional<Rung> decided, Rung truth, Count truthCount, Optional<Count> named, Grade grade) {
  /** How good a decision is. */
  enum Grade {
    /** The cheapest rung that meets the need, and the named cure really meets it. */
    RIGHT,
    /** One rung dearer and the need is met, or one image would have turned the answer. */
    NEIGHBOUR,
    /** The cheapest rung, but the cure that was named falls short. */
    FALLS_SHORT,
    /** A rung that does not meet the need. */
    TOO_CHEAP,
    /** A dearer rung than needed. */
    TOO_DEAR,
    /** The tool says that it cannot tell, or nothing. */
    CANNOT_TELL
  }

  static Judged of(ToldLadder told, TrueLadder truth) {
    Rung cheapest = truth.cheapest();
    Count best = truth.of(cheapest);
    Optional<Rung> decided = told.decided();
    if (decided.isEmpty()) {
      return new Judged(decided, cheapest, best, Optional.empty(), Grade.CANNOT_TELL);
    }
    Rung rung = decided.get();
    Optional<Count> named =
        rung == Rung.AIR_LIMIT || rung == Rung.LOOP_LIMIT
            ? Optional.empty()
            : Optional.of(
                told.step(rung)
                    .map(step -> truth.with(told.climbed(step).toArray(Cure[]::new)))
                    .orElse(new Count(0, 1)));
    return new Judged(decided, cheapest, best, named, grade(rung, cheapest, named, told, truth));
  }

  private static Grade grade(
      Rung decided, Rung cheapest, Optional<Count> named, ToldLadder told, TrueLadder truth) {
    // What lies above the mount's own cures meets no need by being named.
    boolean met = named.map(Count::meets).orElse(false);
    boolean close = named.map(Count::close).orElse(false);
    if (decided == cheapest) {
      boolean right = met || named.isEmpty();
      return right ? Grade.RIGHT : close ? Grade.NEIGHBOUR : Grade.FALLS_SHORT;
    }
    if (decided.compareTo(cheapest) < 0) {
      // The tool's own settings may be better than those of the grid.
      return met ? Grade.RIGHT : close ? Grade.NEIGHBOUR : Grade.TOO_CHEAP;
    }
    // Nobody opens a mount without harm.
    boolean next =
        met
            && !decided.mechanical()
            && told.steps().stream()
                .filter(step -> step.offered() && step.rung() != Rung.LOOP_LIMIT)
                .noneMatch(
                    step ->
                        step.rung().compareTo(cheapest) > 0 && step.rung().compareTo(decided) < 0);
    boolean tie =
        List.of(Rung.values()).stream()
            .filter(rung -> rung.compareTo(decided) < 0 && rung != Rung.LOOP_LIMIT)
            .allMatch(rung -> !truth.of(rung).meets() || truth.of(rung).close());
    return next || tie && (met || named.isEmpty()) ? Grade.NEIGHBOUR : Grade.TOO_DEAR;
  }
}
