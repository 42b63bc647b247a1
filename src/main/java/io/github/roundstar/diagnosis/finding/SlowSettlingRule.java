package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Settling;

/**
 * Time lost after dithers. The interval takes the spread of the times: from median to 90 % quantile
 * there are 1.28 standard deviations of a normal spread.
 */
final class SlowSettlingRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.SLOW_SETTLING;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    Settling settling = facts.result().night().settling();
    double hours = facts.loggedSeconds() / 3600;
    boolean few = settling == null || settling.dithers() < Thresholds.FEWEST_DITHERS;
    if (few || settling.medianSeconds() == null || hours == 0) {
      return Answer.none(
          few
              ? "the log holds too few dithers to judge how the star settles"
              : facts.because("/night/settling/medianSeconds"));
    }
    double share = settling.hoursLost() / hours;
    double median = settling.medianSeconds();
    double spread =
        settling.p90Seconds() == null || median == 0
            ? 0
            : (settling.p90Seconds() - median) / 1.28 / median;
    double half = Estimate.SIGMAS_95 * share * spread / Math.sqrt(settling.dithers());
    return new Draft(code(), facts)
        .title(
            "Settling after dithers takes "
                + Wording.number(median)
                + " s and "
                + Wording.percent(share)
                + " of the night",
            "Settling after dithers takes little time")
        .say(
            Wording.counted(settling.dithers(), "dither")
                + " took "
                + Wording.period(3600 * settling.hoursLost())
                + " together, "
                + Wording.number(median)
                + " s in the middle.")
        .timeLost(Estimate.symmetric(share, Math.max(0, half)), settling.hoursLost())
        .act(
            "Dither by a smaller step, or after every second or third exposure.",
            "Ease the limit below which the star counts as settled, to about twice the guiding RMS.",
            "If Dec alone settles late, see what this page says of backlash.")
        .lostTo("slow-settling")
        .judged();
  }
}
