package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.RunResult;

/**
 * Clouds: the star was lost, or dimmed so far that it could not be followed. Frames lost without
 * any dimming before are not laid to clouds.
 */
final class CloudsRule implements Rule {
  private static final double SECONDS_PER_HOUR = 3600;

  @Override
  public FindingCode code() {
    return FindingCode.CLOUDS;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    RowCounts counts =
        facts.result().runs().stream()
            .map(RunResult::counts)
            .reduce(RowCounts.NONE, RowCounts::plus);
    int clouds = facts.events().count(EventTally.CLOUD);
    int seen = counts.used() + counts.lost();
    double share = seen == 0 ? 0 : (double) counts.lost() / seen;
    if (clouds == 0 && share >= Thresholds.WORTH_FIXING) {
      return Answer.none(
          "the star was lost in "
              + Wording.percent(share)
              + " of the frames, but nothing shows that it dimmed before: log its brightness (flux or"
              + " snr)");
    }
    double hours = share * facts.loggedSeconds() / SECONDS_PER_HOUR;
    Draft draft =
        new Draft(code(), facts)
            .title(
                "Clouds took the star away for " + Wording.percent(share) + " of the time",
                "Clouds are no trouble")
            .say(
                (clouds == 0 ? "No cloud was seen" : Wording.counted(clouds, "cloud"))
                    + "; the star was lost in "
                    + (counts.lost() == 0 ? "none" : String.valueOf(counts.lost()))
                    + " of "
                    + seen
                    + " frames.")
            .timeLost(new Estimate(share, share, share), hours)
            .act(
                "Leave out the exposures of that time; the mount needs nothing.",
                "Have the guiding program wait for the star instead of giving up.");
    return clouds == 0 ? draft.judged() : draft.lostTo("star-lost").judged();
  }
}
