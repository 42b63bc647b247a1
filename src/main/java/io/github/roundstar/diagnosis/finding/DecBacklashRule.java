package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.NightResult;
import java.util.Optional;

/**
 * Play in the declination gears. Told apart from over-correction (a gain above the better one and
 * offsets that change sides) and from seeing (noise alike in both axes) by the width of play that
 * the likelihood finds: its interval must lie above zero.
 */
final class DecBacklashRule implements Rule {
  /**
   * Behind real play Dec answers as strongly as right ascension. An axis that sticks until pulses
   * add up lets only the large ones through whole: at noise 0.3 arcsec, simulated stiction of 1
   * arcsec made the strength of Dec 2.4 times the declared one and 2 arcsec 3.3 times, but 0.5
   * arcsec only 1.05 times, which this does not see.
   */
  private static final double STICKING_STRENGTH = 1.25;

  private static final String STICKS =
      "Behind it, pulses seem to move Dec much farther than right ascension: the axis sticks and then"
          + " lets go, rather than having play alone.";

  private static final String EITHER =
      "Gears that stick a little and then let go lose motion much the same way: this log does not"
          + " tell the two apart.";

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
            .say("A reversal in Dec takes up " + Wording.both(play) + " arcsec before it acts.")
            .say(sticks(facts.result()) ? STICKS : EITHER);
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

  /** Whether Dec surely answers more strongly than right ascension does by that factor. */
  private static boolean sticks(NightResult result) {
    Optional<Estimate> dec =
        Pooled.estimate(
            result,
            run ->
                run.responseArcsecPerSecond() == null || run.responseArcsecPerSecond().dec() == null
                    ? null
                    : run.responseArcsecPerSecond().dec().axis());
    Optional<Estimate> ra =
        Pooled.estimate(
            result,
            run ->
                run.responseArcsecPerSecond() == null || run.responseArcsecPerSecond().ra() == null
                    ? null
                    : run.responseArcsecPerSecond().ra().axis());
    return dec.isPresent()
        && ra.isPresent()
        && dec.get().lo95() > STICKING_STRENGTH * ra.get().hi95();
  }
}
