package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import java.util.Optional;

/**
 * Play in the declination gears. Told apart from over-correction (a gain above the better one and
 * offsets that change sides) and from seeing (noise alike in both axes) by the width of play that
 * the likelihood finds: its interval must lie above zero.
 */
final class DecBacklashRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.DEC_BACKLASH;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    Optional<Estimate> play =
        Optional.ofNullable(facts.result().night().backlashArcsecAxis())
            .map(backlash -> backlash.dec())
            .or(
                () ->
                    Pooled.estimate(
                        facts.result(),
                        run ->
                            run.backlashArcsecAxis() == null
                                ? null
                                : run.backlashArcsecAxis().dec()));
    if (play.isEmpty()) {
      return Answer.none(
          facts.because("/runs/*/backlashArcsecAxis/dec", "/night/backlashArcsecAxis"));
    }
    return finding(facts, play.get());
  }

  private Answer<Finding> finding(Facts facts, Estimate play) {
    Draft draft =
        new Draft(code(), facts)
            .title(
                "The Dec gears have " + Wording.number(play.value()) + " arcsec of play",
                "Play in Dec is no trouble")
            .say("A reversal in Dec takes up " + Wording.both(play) + " arcsec before it acts.");
    if (facts.budget().isPresent()) {
      draft.part(facts.budget().get().part(Axis.DEC, "backlash"::equals), play);
    } else {
      draft.shareUnknown(
          "what the play does to the star is not known: " + facts.because("/runs/*/budget"));
    }
    return draft
        .act(
            "Let Dec be guided one way only, against its drift, or raise its deadband so that it"
                + " reverses seldom.",
            "Balance Dec a little to one side, so that the gears stay on one flank.",
            "Look for a loose belt, pinion or clamp in Dec.",
            "Only then set the Dec worm's mesh closer, by the maker's manual.")
        .caution(Cautions.GEARS)
        .lostTo("dec-backlash")
        .judged();
  }
}
