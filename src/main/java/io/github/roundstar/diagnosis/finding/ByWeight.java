package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Finding;
import java.util.Comparator;
import java.util.Optional;

/**
 * The weightiest finding first: by level, then by its share of the trailing or of the exposures,
 * whichever is larger. A fault of the set-up has no share, since it makes every figure doubtful; it
 * comes before those that have one. What weighs the same keeps the order of a careful owner.
 *
 * <p>The polar axis and the field rotation that it makes are weighed by the images where these were
 * measured: if they lost to the turn alone what they lost, the drift that guiding followed counts
 * no more.
 */
final class ByWeight implements Comparator<Finding> {
  /** Below every share. */
  private static final double LEAST = -1;

  private final Optional<ExposureTally> exposures;

  ByWeight(Optional<ExposureTally> exposures) {
    this.exposures = exposures;
  }

  @Override
  public int compare(Finding one, Finding other) {
    return Comparator.comparing(Finding::level)
        .thenComparing(this::weight, Comparator.reverseOrder())
        .thenComparing(finding -> FindingCode.of(finding.code()))
        .compare(one, other);
  }

  private double weight(Finding finding) {
    boolean setUp = FindingCode.of(finding.code()).about() == FindingCode.About.SETTINGS;
    if (finding.shareOfTrailing() == null && setUp) {
      return 1;
    }
    if (turnAlone(finding)) {
      return LEAST;
    }
    double share = finding.shareOfTrailing() == null ? 0 : finding.shareOfTrailing();
    return Math.max(share, shareOfExposures(finding));
  }

  private boolean turnAlone(Finding finding) {
    return FindingCode.of(finding.code()) == FindingCode.POLAR_AXIS
        && exposures
            .filter(ExposureTally::measured)
            .filter(tally -> tally.lostTo(FindingCode.POLAR_AXIS.word()).trailed() == 0)
            .filter(tally -> tally.lostTo(FindingCode.FIELD_ROTATION.word()).trailed() > 0)
            .isPresent();
  }

  private double shareOfExposures(Finding finding) {
    if (finding.expectedRoundExposures() == null || exposures.isEmpty()) {
      return 0;
    }
    ExposureTally tally = exposures.get();
    return (double) (finding.expectedRoundExposures() - tally.round()) / tally.judged();
  }
}
