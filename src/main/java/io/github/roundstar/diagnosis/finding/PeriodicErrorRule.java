package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.Cure;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.Rung;
import java.util.Comparator;
import java.util.Optional;

/**
 * What the gears of the right-ascension drive let through: the budget's periodic parts, with the
 * interval of the leading component's amplitude.
 */
final class PeriodicErrorRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.PERIODIC_ERROR;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    Periodic periodic = facts.result().night().periodic();
    if (periodic == null) {
      return Answer.none(facts.because("/night/periodic", "/runs/*/periodic"));
    }
    Optional<Component> leading = leading(periodic);
    if (leading.isEmpty() && periodic.detectable() == null) {
      return Answer.none(facts.because("/night/periodic/detectable"));
    }
    Draft draft = new Draft(code(), facts);
    leading.ifPresentOrElse(
        component -> describe(draft, periodic, component),
        () ->
            draft
                .title("Something turns unevenly", "No gear stands out")
                .say(
                    "No period stands out from wander and noise; it would have taken "
                        + Wording.number(2 * periodic.detectable().amplitudeArcsecAxis())
                        + " arcsec peak to peak."));
    weigh(draft, facts, leading);
    advise(draft, facts, periodic);
    return draft.lostTo("periodic-error").judged();
  }

  /** The worm's own, else the strongest, of those that are no chance and no alias. */
  private static Optional<Component> leading(Periodic periodic) {
    return periodic.components().stream()
        .filter(
            c ->
                c.falseAlarm() < Thresholds.FALSE_ALARM
                    && c.amplitudeArcsecAxis().lo95() > 0
                    && !c.mayBeAlias())
        .max(
            Comparator.comparing((Component c) -> c.source().equals("worm"))
                .thenComparing(c -> c.amplitudeArcsecAxis().value()));
  }

  private static void describe(Draft draft, Periodic periodic, Component leading) {
    boolean worm = leading.source().equals("worm");
    Estimate swing =
        periodic.peakToPeakArcsecAxis() == null
            ? leading.amplitudeArcsecAxis().times(2)
            : periodic.peakToPeakArcsecAxis();
    String what =
        (worm ? "The worm's swing of " : "A gear's swing of ")
            + Wording.number(swing.value())
            + " arcsec every "
            + Wording.period(leading.periodSeconds().value());
    draft
        .title(what + " gets through guiding", what + " is nearly all guided out")
        .say("Peak to peak at the axis: " + Wording.both(swing) + " arcsec.");
    if (leading.source().startsWith("strain-wave")) {
      draft.say(
          "It is the strain-wave drive's own: its curve has steep parts, which short guide"
              + " exposures follow best.");
    } else if (!worm) {
      draft.say(
          "The period belongs to no worm that the equipment file names; find the gear that turns"
              + " once in this time.");
    }
  }

  private static void weigh(Draft draft, Facts facts, Optional<Component> leading) {
    if (facts.budget().isEmpty()) {
      draft.shareUnknown(
          "how much of it guiding let through is not known: " + facts.because("/runs/*/budget"));
      return;
    }
    TrailingBudget.Part part =
        facts.budget().get().part(Axis.RA, cause -> cause.startsWith("periodic:"));
    draft.part(part, leading.map(Component::amplitudeArcsecAxis).orElse(new Estimate(0, 0, 0)));
  }

  /** The better gain that the night was played with. */
  private static Optional<Cure> gain(Facts facts) {
    return facts
        .result()
        .rung(Rung.SETTINGS)
        .flatMap(rung -> rung.cures().stream().filter(c -> c.cure().equals("ra-gain")).findFirst());
  }

  private static void advise(Draft draft, Facts facts, Periodic periodic) {
    gain(facts).ifPresent(cure -> draft.act(CureWords.shortly(cure) + " first."));
    boolean trainable =
        periodic.repeatability() != null && periodic.repeatability() >= Thresholds.TRAINABLE;
    if (periodic.repeatability() == null || trainable) {
      draft.act(
          "Train the mount's own periodic-error correction over three turns and more, and keep it on"
              + " if the next night's log is better.");
    } else {
      draft.act(
          "Do not rely on training: only "
              + Wording.percent(periodic.repeatability())
              + " of the curve comes back every turn.");
    }
    draft
        .act(
            "Balance RA a little heavy to the east, so that the gears stay on one flank.",
            "Only then have the worm seen to: clean and grease it, and set its mesh by the maker's"
                + " manual.")
        .caution(Cautions.GEARS);
  }
}
