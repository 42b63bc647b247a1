package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A gain that is off in one axis or both: what over- and under-correction have in common. */
final class GainFinding {
  private GainFinding() {}

  /** What another gain would save in both axes, of those axes in which it is off. */
  record Saving(List<GainChange> off, Estimate share, double wholeArcsec2) {}

  /** Which gains are off, one way. */
  interface Off {
    boolean test(Facts facts, GainChange change);
  }

  /**
   * The saving; none when no axis' gain is known. Its share is that of the trailing mean square
   * where there is a budget, like the share of every other cause, else of the star's motion.
   */
  static Answer<Saving> saving(Facts facts, Off off) {
    List<GainChange> known = new ArrayList<>();
    String because = "";
    for (Axis axis : Axis.values()) {
      Answer<GainChange> change = GainChange.of(facts, axis);
      change.value().ifPresent(known::add);
      because = because.isEmpty() ? change.because() : because;
    }
    if (known.isEmpty()) {
      return Answer.none(because);
    }
    double whole =
        facts
            .budget()
            .map(TrailingBudget::trailingArcsec2)
            .orElseGet(() -> known.stream().mapToDouble(GainChange::wholeArcsec2).sum());
    List<GainChange> wrong = known.stream().filter(change -> off.test(facts, change)).toList();
    double value = wrong.stream().mapToDouble(c -> c.savedArcsec2().value()).sum();
    double low = wrong.stream().mapToDouble(c -> c.savedArcsec2().lo95()).sum();
    double high = wrong.stream().mapToDouble(c -> c.savedArcsec2().hi95()).sum();
    return Answer.of(
        new Saving(
            wrong,
            whole <= 0 ? new Estimate(0, 0, 0) : new Estimate(value, low, high).times(1 / whole),
            whole));
  }

  /** Tells gains and shares; a fault of the pulses' strength takes the finding over. */
  static Draft weigh(Draft draft, Facts facts, Saving saving) {
    for (GainChange change : saving.off()) {
      draft.say(
          String.format(
              Locale.ROOT,
              "A correction in %s takes away %s of the offset; by the %s %s would do better.",
              name(change.axis()),
              Wording.both(change.gain()),
              change.how(),
              Wording.number(change.better())));
    }
    if (saving.off().isEmpty()) {
      return draft
          .say("The gain in use is a usual one, or the replay knows none that is surely better.")
          .level(Level.FINE, Measure.MOST_CONFIDENCE);
    }
    if (explainedByPulses(facts, saving)) {
      return draft
          .say("The pulses themselves are off, which explains it; see there.")
          .level(Level.WATCH, Measure.MOST_CONFIDENCE);
    }
    return draft.share(saving.share(), saving.wholeArcsec2(), removable(saving));
  }

  /**
   * Whether the gain is off only because each pulse moves the star more or less than it should:
   * with the declared strength the gain would be usual.
   */
  static boolean explainedByPulses(Facts facts, Saving saving) {
    return !saving.off().isEmpty()
        && saving.off().stream()
            .allMatch(
                change -> {
                  Optional<Estimate> strength = facts.pulses().strength(change.axis());
                  if (strength.isEmpty()
                      || !Thresholds.off(strength.get(), Thresholds.STRENGTH_OFF)) {
                    return false;
                  }
                  double meant = change.gain().value() / strength.get().value();
                  return meant >= Thresholds.LOW_GAIN && meant <= Thresholds.HIGH_GAIN;
                });
  }

  private static double removable(Saving saving) {
    return saving.off().stream().mapToDouble(c -> c.savedArcsec2().value()).sum();
  }

  /** {@code RA from 0.12 to 0.60}. */
  static String settings(Saving saving) {
    return Sentences.list(
        saving.off().stream()
            .map(
                c ->
                    String.format(
                        Locale.ROOT,
                        "%s by the factor %s",
                        name(c.axis()),
                        Wording.number(c.better() / c.gain().value())))
            .toList());
  }

  /** What to do about the gain: as the ladder has it where it decided on that. */
  static String action(Facts facts, FindingCode code, String otherwise) {
    return facts
        .ladder()
        .flatMap(ladder -> ladder.chosenFor(code))
        .map(chosen -> CureWords.shortly(chosen.cure()) + ".")
        .orElse(otherwise);
  }

  static String axes(Saving saving) {
    return Sentences.list(saving.off().stream().map(c -> name(c.axis())).toList());
  }

  /** As cures begin with it. */
  static String word(Axis axis) {
    return axis == Axis.RA ? "ra" : "dec";
  }

  static String name(Axis axis) {
    return axis == Axis.RA ? "RA" : "Dec";
  }
}
