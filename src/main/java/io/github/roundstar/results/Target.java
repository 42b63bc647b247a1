package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * One field of a night: runs whose guide stars stand together.
 *
 * @param number from 1, in the order in which fields were first looked at
 * @param runs numbers of its runs
 * @param declinationDeg declination [deg]; null when the log does not tell
 * @param rightAscensionHours right ascension [h]; null when the log does not tell
 * @param leastAltitudeDeg lowest altitude of its star [deg]; null when not known or not to be told
 * @param mostAltitudeDeg highest altitude [deg]
 * @param raRmsArcsec RMS in right ascension about the mean of each run, on the sky [arcsec]
 * @param decRmsArcsec RMS in declination [arcsec]
 * @param driftArcsecPerMinuteSky drift of the mount, corrections taken out; each axis may be null
 */
public record Target(
    int number,
    List<Integer> runs,
    Double declinationDeg,
    Double rightAscensionHours,
    Double leastAltitudeDeg,
    Double mostAltitudeDeg,
    Estimate raRmsArcsec,
    Estimate decRmsArcsec,
    AxisDrift driftArcsecPerMinuteSky) {
  /** Copies the list. */
  public Target {
    runs = List.copyOf(runs);
  }

  /** The exposures whose middle lies within one of its runs; none where times are not known. */
  public List<Exposure> exposuresOf(NightResult night) {
    if (night.exposures() == null) {
      return List.of();
    }
    return night.exposures().stream().filter(exposure -> within(night.runs(), exposure)).toList();
  }

  private boolean within(List<RunResult> all, Exposure exposure) {
    if (exposure.startUtc() == null) {
      return false;
    }
    Instant middle =
        Instant.parse(exposure.startUtc()).plusMillis(Math.round(500 * exposure.seconds()));
    return all.stream()
        .filter(run -> runs.contains(run.id()) && run.startUtc() != null)
        .anyMatch(
            run -> {
              Duration since = Duration.between(Instant.parse(run.startUtc()), middle);
              return !since.isNegative() && since.toMillis() <= 1000 * run.durationSeconds();
            });
  }
}
