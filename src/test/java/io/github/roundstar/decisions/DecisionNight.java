package io.github.roundstar.decisions;

import io.github.roundstar.decisions.ToldLadder.Change;
import io.github.roundstar.decisions.ToldLadder.Step;
import io.github.roundstar.decisions.TrueLadder.Count;
import io.github.roundstar.worlds.Cure;
import io.github.roundstar.worlds.Kind;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One night judged.
 *
 * @param asItWas what the images came to without any cure
 * @param asItWasHeld whether the interval told for that holds it; nothing where nothing was told
 * @param namedHeld the same of the cure that was decided on
 * @param back whether the settings that were recommended, once made, are recommended away again;
 *     nothing where none were
 * @param line what is printed of the night
 */
record DecisionNight(
    Judged judged,
    Count asItWas,
    Optional<Boolean> asItWasHeld,
    Optional<Boolean> namedHeld,
    Optional<Boolean> back,
    String line) {

  static DecisionNight of(Kind kind, long seed) throws Exception {
    Kind.Drawn drawn = kind.night(seed);
    ToldLadder told = Analysed.json(drawn);
    TrueLadder truth = new TrueLadder(drawn);
    Judged judged = Judged.of(told, truth);
    Count asItWas = truth.of(Rung.AS_IT_WAS);
    Optional<Step> first = told.step(Rung.AS_IT_WAS);
    Optional<Step> decided =
        judged.decided().filter(rung -> rung != Rung.AS_IT_WAS).flatMap(told::step);
    Optional<Boolean> namedHeld =
        decided.flatMap(step -> judged.named().flatMap(count -> held(step, count)));
    Optional<Boolean> back =
        judged.decided().filter(Rung.SETTINGS::equals).isPresent()
            ? Optional.of(back(drawn, decided.orElseThrow()))
            : Optional.empty();
    return new DecisionNight(
        judged,
        asItWas,
        first.flatMap(step -> held(step, asItWas)),
        namedHeld,
        back,
        String.format(
            Locale.ROOT,
            "%s: %s; decided %s %s; true %s %s%s told %s; as it was %s told %s; named %s told %s%s",
            drawn,
            judged.grade(),
            judged.decided().map(Rung::key).orElse("nothing"),
            decided.map(Step::cures).orElse(List.of()),
            judged.truth().key(),
            judged.truthCount(),
            judged.truth() == Rung.SETTINGS ? " by " + truth.settingsInWords() : "",
            told.step(judged.truth()).map(DecisionNight::words).orElse("-"),
            asItWas,
            first.map(DecisionNight::words).orElse("-"),
            judged.named().map(Count::toString).orElse("-"),
            decided.map(DecisionNight::words).orElse("-"),
            back.orElse(false) ? "; LEADS BACK" : ""));
  }

  private static String words(Step step) {
    return String.format(
        Locale.ROOT,
        "%.1f (%.1f..%.1f)/%d p %.2f",
        step.round().value(),
        step.round().low(),
        step.round().high(),
        step.units(),
        step.meetsNeed());
  }

  /** Whether what was named leaves fewer images round than there were, by more than one. */
  boolean worse() {
    return judged
        .named()
        .filter(
            count ->
                count.round() + 1
                    < (double) asItWas.round() / Math.max(1, asItWas.units()) * count.units())
        .isPresent();
  }

  /**
   * Whether the interval holds the true count. Where the tool judged windows of its own, shares are
   * compared, give or take one window.
   */
  static Optional<Boolean> held(Step step, Count count) {
    if (!step.offered() && step.rung() != Rung.AS_IT_WAS || step.units() == 0) {
      return Optional.empty();
    }
    if (step.units() == count.units()) {
      return Optional.of(step.round().holds(count.round()));
    }
    double share = (double) count.round() / count.units();
    double one = 1.0 / step.units();
    return Optional.of(
        step.round().low() / step.units() - one <= share
            && share <= step.round().high() / step.units() + one);
  }

  /** Plays the night with the recommended settings and asks the tool again. */
  private static boolean back(Kind.Drawn drawn, Step settings) throws Exception {
    Cure[] cures = ToldLadder.played(settings).toArray(Cure[]::new);
    Kind.Drawn after =
        new Kind.Drawn(drawn.kind(), drawn.seed(), drawn.night().again(cures), drawn.listing());
    ToldLadder told = Analysed.json(after);
    if (told.decided().filter(Rung.SETTINGS::equals).isEmpty()) {
      return false;
    }
    Step next = told.step(Rung.SETTINGS).orElseThrow();
    return settings.cures().stream()
        .anyMatch(
            change ->
                next.cures().stream()
                    .anyMatch(
                        again ->
                            again.code().equals(change.code())
                                && direction(again) * direction(change) < 0));
  }

  /** 1 up, -1 down, 0 not said. */
  static double direction(Change change) {
    return change.way();
  }
}
