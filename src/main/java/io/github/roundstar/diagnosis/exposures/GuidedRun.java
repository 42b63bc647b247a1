package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import java.util.Optional;

/**
 * What is known of a run of guiding when its exposures are judged.
 *
 * @param run the run
 * @param track where the star was
 * @param decBacklashArcsec play in declination
 * @param decStickingArcsec what an axis that sticks withholds in declination, where it does
 * @param periodicArcsec periodic error peak to peak at the axis, where one was found
 */
public record GuidedRun(
    GuideRun run,
    StarTrack track,
    Optional<Estimate> decBacklashArcsec,
    Optional<Estimate> decStickingArcsec,
    Optional<Estimate> periodicArcsec) {
  GuidedRun on(StarTrack other) {
    return new GuidedRun(run, other, decBacklashArcsec, decStickingArcsec, periodicArcsec);
  }
}
