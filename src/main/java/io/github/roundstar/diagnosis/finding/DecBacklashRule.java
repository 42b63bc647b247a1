package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.RunResult;
import java.util.Optional;
import java.util.function.Function;

/**
 * Play in the declination gears, or an axis that sticks. Told apart from over-correction (a gain
 * above the better one and offsets that change sides) and from seeing (noise alike in both axes) by
 * the width of play that the likelihood finds: its interval must lie above zero. Play and sticking
 * are told from each other by the likelihood of the run behind either.
 */
final class DecBacklashRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.DEC_BACKLASH;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    Optional<Estimate> sticking = sticking(facts);
    Optional<Estimate> play = play(facts);
    if (sticking.isPresent()) {
      return levelled(facts, stuck(facts, sticking.get()), sticking.get());
    }
    return play.isPresent()
        ? levelled(facts, loose(facts, play.get()), play.get())
        : Answer.none(facts.because("/runs/*/backlashArcsecAxis/dec", "/night/backlashArcsecAxis"));
  }

  private static Optional<Estimate> play(Facts facts) {
    return Optional.ofNullable(facts.result().night().backlashArcsecAxis())
        .map(backlash -> backlash.dec())
        .or(
            () ->
                ofRuns(
                    facts,
                    run ->
                        run.backlashArcsecAxis() == null ? null : run.backlashArcsecAxis().dec()));
  }

  private static Optional<Estimate> sticking(Facts facts) {
    return Optional.ofNullable(facts.result().night().stickingArcsecAxis())
        .map(sticking -> sticking.dec())
        .or(
            () ->
                ofRuns(
                    facts,
                    run ->
                        run.stickingArcsecAxis() == null ? null : run.stickingArcsecAxis().dec()));
  }

  private static Optional<Estimate> ofRuns(Facts facts, Function<RunResult, Estimate> figure) {
    return Pooled.estimate(facts.result(), figure);
  }

  private Draft loose(Facts facts, Estimate play) {
    return new Draft(code(), facts)
        .title(
            "The Dec gears have " + Wording.number(play.value()) + " arcsec of play",
            "Play in Dec is no trouble")
        .say("A reversal in Dec takes up " + width(play) + " arcsec before it acts.")
        .say(
            "Whether the axis sticks instead: "
                + facts.because("/runs/*/stickingArcsecAxis/dec")
                + ".")
        .act(
            "Let Dec be guided one way only, against its drift, or raise its deadband so that it"
                + " reverses seldom.",
            "Balance Dec a little to one side, so that the gears stay on one flank.",
            "Look for a loose belt, pinion or clamp in Dec.",
            "Only then set the Dec worm's mesh closer, by the maker's manual.");
  }

  /** Where none stands out, what it can be at most. */
  private static String width(Estimate play) {
    return play.lo95() > 0 ? Wording.both(play) : "at most " + Wording.number(play.hi95());
  }

  private Draft stuck(Facts facts, Estimate sticking) {
    return new Draft(code(), facts)
        .title(
            "Dec sticks: it withholds " + Wording.number(sticking.value()) + " arcsec of pulses",
            "Sticking in Dec is no trouble")
        .say(
            "Dec stays put until pulses add up to "
                + Wording.both(sticking)
                + " arcsec, then lets go and makes up for all of it at once.")
        .say("Sticking describes the log clearly better than play of the gears does.")
        .act(
            "Balance Dec with everything mounted, and see that no cable pulls on it.",
            "With the clutch open and the load supported, feel whether Dec turns evenly all the way"
                + " round: a stiff place points to a bearing or to old grease.",
            "See that the mesh of the Dec gears is not too tight, by the maker's manual.",
            "Only then have the axis cleaned and greased anew, or its bearings set, by the maker or"
                + " a workshop that is qualified for it.");
  }

  private static Answer<Finding> levelled(Facts facts, Draft draft, Estimate lost) {
    if (facts.budget().isPresent()) {
      draft.part(facts.budget().get().part(Axis.DEC, "backlash"::equals), lost);
    } else {
      draft.shareUnknown(
          "what the lost motion does to the star is not known: " + facts.because("/runs/*/budget"));
    }
    return draft.caution(Cautions.GEARS).lostTo("dec-backlash").judged();
  }
}
