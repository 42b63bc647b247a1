package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Rung;
import java.util.Optional;

/**
 * The air sets the limit: the error of measuring the star makes the larger half of what is logged,
 * at the lower bound. The air moves both axes alike; where RA is surely noisier than Dec, only as
 * much as Dec has counts as the air's, and the rest is laid to the drive. Where the night was
 * played again, the air sets the limit where no cure below it meets the need.
 */
final class SeeingBoundRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.SEEING_BOUND;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    Guided guided = facts.result().night().guided();
    Optional<Estimate> ra = noise(facts, Axis.RA);
    Optional<Estimate> dec = noise(facts, Axis.DEC);
    if (guided == null) {
      return Answer.none(facts.because("/night/guided"));
    }
    if (LogTooShortRule.moreMinutes(facts) > 0) {
      return Answer.none("the log is too short to say what set the limit");
    }
    if (ra.isEmpty() || dec.isEmpty()) {
      String axis = ra.isEmpty() ? "ra" : "dec";
      return Answer.none(facts.because("/runs/*/noiseFloorArcsec/" + axis));
    }
    double logged = guided.rmsRadialArcsec() * guided.rmsRadialArcsec();
    if (logged == 0) {
      return Answer.none("the offsets never change, so they are no star's");
    }
    boolean rough = ra.get().lo95() > Thresholds.NOISE_RATIO * dec.get().hi95();
    Estimate raAir = rough ? dec.get() : ra.get();
    Estimate share =
        new Estimate(
            sum(raAir.value(), dec.get().value()) / logged,
            sum(raAir.lo95(), dec.get().lo95()) / logged,
            sum(raAir.hi95(), dec.get().hi95()) / logged);
    return Answer.of(finding(facts, share, ra.get(), dec.get(), rough));
  }

  private static Optional<Estimate> noise(Facts facts, Axis axis) {
    return Pooled.estimate(facts.result(), run -> noise(run, axis));
  }

  private static Estimate noise(RunResult run, Axis axis) {
    return run.noiseFloorArcsec() == null
        ? null
        : axis == Axis.RA ? run.noiseFloorArcsec().ra() : run.noiseFloorArcsec().dec();
  }

  private static double sum(double ra, double dec) {
    return Math.max(0, ra) * Math.max(0, ra) + Math.max(0, dec) * Math.max(0, dec);
  }

  private Finding finding(Facts facts, Estimate share, Estimate ra, Estimate dec, boolean rough) {
    boolean bound =
        facts
            .ladder()
            .map(ladder -> ladder.rung().equals(Rung.AIR_LIMIT))
            .orElse(share.lo95() >= Thresholds.AIR_SHARE);
    String evidence =
        "Measuring the star in one frame is off by "
            + Wording.both(ra)
            + " arcsec in RA and "
            + Wording.both(dec)
            + " in Dec, by air and camera; that is "
            + Wording.percent(share)
            + " of the mean square logged."
            + (rough
                ? " RA is noisier than Dec, which the air cannot make: the rest is laid to the"
                    + " drive, such as a rough worm."
                : "");
    return new Draft(code(), facts)
        .title("The air set the limit", "The air is not the limit")
        .say(evidence)
        .level(bound ? Level.WATCH : Level.FINE, Measure.MOST_CONFIDENCE)
        .act(
            "Leave the mount as it is.",
            "Expose the guide camera longer, so that the air averages out, as long as the mount"
                + " allows.",
            "Choose targets higher up and keep warm roofs and walls out of the line of sight.")
        .judged()
        .value()
        .orElseThrow();
  }
}
