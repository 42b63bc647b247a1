package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import java.util.Locale;
import java.util.Optional;

/**
 * Pulses move the star more or less than the declared guide rate says, in one axis or by another
 * factor in each. Where both axes are off by one factor, it is the pixel scale's finding. It takes
 * over what a gain that is off by it costs.
 */
final class PulseStrengthRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.PULSE_STRENGTH;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    PulseReading pulses = facts.pulses();
    if (pulses.ra().isEmpty() && pulses.dec().isEmpty()) {
      return Answer.none(facts.because("/runs/*/responseArcsecPerSecond/ra"));
    }
    if (pulses.mixed().isPresent()) {
      return Answer.none(pulses.mixed().get());
    }
    Draft draft = new Draft(code(), facts);
    double farthest = 0;
    String worst = "";
    for (Axis axis : Axis.values()) {
      Optional<Estimate> strength = pulses.strength(axis);
      if (strength.isPresent()) {
        draft.say(
            "Pulses in "
                + GainFinding.name(axis)
                + " act with "
                + Wording.both(strength.get())
                + " of the declared strength.");
        double off = Math.abs(strength.get().value() - 1);
        if (off >= farthest) {
          farthest = off;
          worst = GainFinding.name(axis) + " move the star " + words(strength.get().value());
        }
        draft.spoils(Deviation.from(strength.get(), 1));
      } else {
        draft.shareUnknown(
            facts.because(
                "/runs/*/responseArcsecPerSecond/" + axis.name().toLowerCase(Locale.ROOT)));
      }
    }
    draft.title("Pulses in " + worst, "Pulses are as strong as they should be");
    if (pulses.bothOff()) {
      return new Draft(code(), facts)
          .title("", "Both axes are off alike: see the pixel scale")
          .say("Pulses in both axes are off by one factor.")
          .level(Level.FINE, Measure.MOST_CONFIDENCE)
          .judged();
    }
    PulseGain.takeOver(draft, facts);
    return draft
        .act(
            "Set the guide rate in the guiding program to that of the mount, or measure it anew with"
                + " the program's own trial moves near the celestial equator.",
            "Where one axis alone is weak, look for a slipping clutch or a tight gear in it.")
        .caution(Cautions.BALANCE)
        .lostTo("pulse-strength")
        .judged();
  }

  private static String words(double strength) {
    return strength < 1
        ? "by " + Wording.percent(1 - strength) + " less than they should"
        : "by " + Wording.percent(strength - 1) + " more than they should";
  }
}
