package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import java.util.Optional;

/**
 * Pulses one way act more than the other way: an axis out of balance, or a stiff one. Half the
 * difference over the mean is the share of each correction that is too much or too little. Play
 * that matters makes a difference between north and south too; that one is left to the play.
 */
final class AxisImbalanceRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.AXIS_IMBALANCE;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    Optional<Estimate> ra = facts.pulses().eastLessWest();
    Optional<Estimate> dec = facts.pulses().northLessSouth().filter(share -> !playMatters(facts));
    if (ra.isEmpty() && dec.isEmpty()) {
      return Answer.none(
          facts.because(
              "/runs/*/responseArcsecPerSecond/ra/east", "/runs/*/responseArcsecPerSecond"));
    }
    Draft draft = new Draft(code(), facts);
    ra.ifPresent(
        share -> {
          draft.say("East less west: " + Wording.percent(share) + " of the mean strength.");
          draft.spoils(Deviation.from(share, 0).times(0.5));
        });
    dec.ifPresent(
        share -> {
          draft.say("North less south: " + Wording.percent(share) + " of the mean strength.");
          draft.spoils(Deviation.from(share, 0).times(0.5));
        });
    return draft
        .title(title(ra, dec), "Pulses act alike both ways")
        .act(
            "Balance both axes with everything mounted, caps off and cables on.",
            "See that no cable pulls and that both axes turn freely with the clutches open.")
        .caution(Cautions.BALANCE)
        .lostTo("axis-imbalance")
        .judged();
  }

  private static boolean playMatters(Facts facts) {
    return new DecBacklashRule()
        .judge(facts)
        .value()
        .map(finding -> finding.level().atLeast(Level.WORTH_FIXING))
        .orElse(false);
  }

  private static String title(Optional<Estimate> ra, Optional<Estimate> dec) {
    double inRa = ra.map(Estimate::value).orElse(0.0);
    double inDec = dec.map(Estimate::value).orElse(0.0);
    boolean leads = Math.abs(inRa) >= Math.abs(inDec);
    String stronger =
        leads
            ? (inRa > 0 ? "east than west" : "west than east")
            : (inDec > 0 ? "north than south" : "south than north");
    return "Pulses act "
        + Wording.percent(Math.abs(leads ? inRa : inDec))
        + " more to the "
        + stronger;
  }
}
