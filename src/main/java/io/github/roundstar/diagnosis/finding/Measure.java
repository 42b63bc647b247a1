package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Level;
import java.util.Optional;
import org.apache.commons.math3.special.Erf;

/**
 * A level that one measure gives.
 *
 * @param level empty when the interval neither shows nor excludes what would matter
 * @param confidence chance that the level is not too high (for {@code FINE}: not too low), the
 *     estimate taken as normal
 */
record Measure(Optional<Level> level, double confidence) {
  /** Nothing is surer than this: the models behind the figures may be wrong in other ways. */
  static final double MOST_CONFIDENCE = 0.99;

  /**
   * By the cut of the trailing RMS that removing a share of its mean square makes.
   *
   * @param share of the trailing mean square
   * @param rmsArcsec trailing radial RMS [arcsec]
   */
  static Measure trailing(Estimate share, double rmsArcsec) {
    double cut = Thresholds.cut(share.lo95());
    double worth = Thresholds.share(Thresholds.WORTH_FIXING);
    if (cut >= Thresholds.FIX_FIRST_CUT && cut * rmsArcsec >= Thresholds.FIX_FIRST_ARCSEC) {
      double needed =
          Thresholds.share(
              Math.max(Thresholds.FIX_FIRST_CUT, Thresholds.FIX_FIRST_ARCSEC / rmsArcsec));
      return found(Level.FIX_FIRST, share, needed);
    }
    return graded(share, worth);
  }

  /** A share as it can be: the noise of a difference may put its bounds outside 0 and 1. */
  static Estimate possible(Estimate share) {
    return new Estimate(bounds(share.value()), bounds(share.lo95()), bounds(share.hi95()));
  }

  private static double bounds(double share) {
    return Math.max(0, Math.min(1, share));
  }

  /** By the exposures lost; each verdict already holds its interval. */
  static Measure exposures(ExposureTally.Lost lost) {
    Estimate share = new Estimate(lost.share(), lost.share(), lost.share());
    return spoiled(share, Thresholds.FIX_FIRST_EXPOSURES, Thresholds.WORTH_FIXING);
  }

  /** By the share of the night's time. */
  static Measure time(Estimate share) {
    return spoiled(share, Thresholds.FIX_FIRST_EXPOSURES, Thresholds.WORTH_FIXING);
  }

  /** By the share of each correction or figure that is spoiled. */
  static Measure spoiled(Estimate share) {
    return spoiled(share, Thresholds.SPOILS_FIRST, Thresholds.SPOILS_WORTH);
  }

  private static Measure spoiled(Estimate share, double first, double worth) {
    return share.lo95() >= first ? found(Level.FIX_FIRST, share, first) : graded(share, worth);
  }

  /** Below fix-first: the lower bound for worth-fixing and watch, the upper one for fine. */
  private static Measure graded(Estimate share, double worth) {
    if (share.lo95() >= worth) {
      return found(Level.WORTH_FIXING, share, worth);
    }
    if (share.hi95() < worth) {
      return new Measure(Optional.of(Level.FINE), bounded(1 - above(share, worth)));
    }
    return share.lo95() > 0 ? found(Level.WATCH, share, 0) : new Measure(Optional.empty(), 0);
  }

  private static Measure found(Level level, Estimate share, double needed) {
    return new Measure(Optional.of(level), bounded(above(share, needed)));
  }

  /** Chance that the true value lies above a limit. */
  private static double above(Estimate estimate, double limit) {
    double deviation = (estimate.hi95() - estimate.lo95()) / (2 * Estimate.SIGMAS_95);
    if (deviation == 0) {
      return estimate.value() >= limit ? 1 : 0;
    }
    return 0.5 * (1 + Erf.erf((estimate.value() - limit) / (deviation * Math.sqrt(2))));
  }

  private static double bounded(double chance) {
    return Math.min(MOST_CONFIDENCE, chance);
  }
}
