package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Finding;
import java.util.Optional;

/** What seeing to a finding would buy, as the end of a sentence. */
final class Worth {
  /** Three minutes: less is not worth a word. */
  private static final double LEAST_HOURS = 0.05;

  private Worth() {}

  /**
   * {@code ; without it the star's RMS would fall from 1.20 to about 0.60 arcsec RMS}; may be
   * empty.
   */
  static String clause(Facts facts, Finding finding) {
    Integer round = finding.expectedRoundExposures();
    Optional<ExposureTally> tally = facts.exposures();
    if (round != null && tally.isPresent() && round > tally.get().round()) {
      return "; without it about "
          + round
          + " of "
          + tally.get().judged()
          + " exposures would be round, not "
          + tally.get().round();
    }
    if (finding.expectedRmsRadialArcsec() == null || facts.radialRmsArcsec().isEmpty()) {
      return hours(finding);
    }
    double now = facts.radialRmsArcsec().get();
    double then = finding.expectedRmsRadialArcsec();
    return then > (1 - Thresholds.LEAST_WORTH_SAYING) * now
        ? ""
        : "; without it the star's RMS would fall from "
            + Wording.number(now)
            + " to "
            + Wording.number(then)
            + " arcsec RMS at best"
            + limit(facts);
  }

  private static String hours(Finding finding) {
    Double hours = finding.hoursPerNight();
    return hours == null || hours < LEAST_HOURS
        ? ""
        : "; it takes " + Wording.number(hours) + " h of a night like this";
  }

  private static String limit(Facts facts) {
    return facts
        .limit()
        .map(
            limit ->
                limit.metBy(facts.result().night().guided(), facts.usedFrames())
                    ? ", both within your limit of " + limit.words()
                    : ", against your limit of " + limit.words())
        .orElse("");
  }
}
