package io.github.roundstar.results;

import java.util.List;
import java.util.Optional;

/**
 * A night of a season.
 *
 * @param night its name
 * @param startUtc first frame, ISO 8601; null when the log has no absolute time
 * @param guidedHours hours guided
 * @param decision what to do, in a word; null without a verdict
 * @param first what to do first; empty where nothing is to be done
 * @param rmsRadialArcsec radial RMS of the star [arcsec]; null where it is not known
 * @param roundExposures exposures that are round; null without exposures
 * @param exposures all of them; null likewise
 * @param result file of its JSON result, beside this document
 * @param report file of its page, beside this document
 * @param sha256 hashes of the logs that went in
 */
public record SeasonNight(
    String night,
    String startUtc,
    double guidedHours,
    Decision decision,
    String first,
    Double rmsRadialArcsec,
    Integer roundExposures,
    Integer exposures,
    String result,
    String report,
    List<String> sha256) {
  /** Copies the list. */
  public SeasonNight {
    sha256 = List.copyOf(sha256);
  }

  /** The night of a result whose files have these names. */
  public static SeasonNight of(NightResult night, String result, String report) {
    Guided guided = night.night().guided();
    Optional<ExposureCounts> counts =
        Optional.ofNullable(night.exposures())
            .filter(all -> !all.isEmpty())
            .map(ExposureCounts::of);
    return new SeasonNight(
        night.night().date(),
        night.night().startUtc(),
        night.night().guidedHours(),
        night.verdict() == null ? null : night.verdict().decision(),
        first(night),
        guided == null ? null : guided.rmsRadialArcsec(),
        counts.map(ExposureCounts::round).orElse(null),
        counts.map(ExposureCounts::all).orElse(null),
        result,
        report,
        night.inputs().stream().map(Input::sha256).sorted().toList());
  }

  /** The first step; without steps, the first action of the finding that leads. */
  private static String first(NightResult night) {
    if (night.steps() != null && !night.steps().isEmpty()) {
      return night.steps().get(0).text();
    }
    if (night.verdict() == null
        || night.verdict().decision() == Decision.LEAVE_ALONE
        || night.ladder() != null && night.verdict().rung() != null) {
      return "";
    }
    return night.findings().stream()
        .filter(finding -> finding.level().atLeast(Level.WATCH))
        .flatMap(finding -> finding.action().stream().limit(1))
        .findFirst()
        .orElse("");
  }
}
