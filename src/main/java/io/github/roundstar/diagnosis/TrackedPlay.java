package io.github.roundstar.diagnosis;

import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.sky.SiderealRate;
import java.util.Locale;

/**
 * Why a log does not show the play of the right-ascension gears. Tracking presses them on one
 * flank, and pulses below the sidereal rate only change its speed. A faster pulse east turns the
 * motor back into the play and the tube stands; tracking then turns it forward through the same way
 * while the tube still stands. So the star has moved by the whole pulse, only later: after the
 * pulse by its length times what the guide rate is above the sidereal one, at most.
 */
final class TrackedPlay {
  private TrackedPlay() {}

  /**
   * The reason.
   *
   * @param declaredAxis declared speed of a pulse at the axis [arcsec/s]
   */
  static String whyUnseen(GuideRun run, Answer<Double> declaredAxis) {
    double above = declaredAxis.value().orElse(0.0) / SiderealRate.ARCSEC_PER_SECOND - 1;
    if (above <= 0) {
      return "tracking keeps the gears of this axis on one flank, which pulses slower than the"
          + " sidereal rate never leave, so the log does not show its play";
    }
    return String.format(
        Locale.ROOT,
        "at this guide rate an eastward pulse turns the gears back into their play, but tracking"
            + " brings them forward within %.1f s after it and no motion is lost, so the log does"
            + " not show the play's width",
        above * longestEastSeconds(run));
  }

  private static double longestEastSeconds(GuideRun run) {
    double longest = 0;
    for (int i = 0; i < run.frames().size(); i++) {
      longest = Math.max(longest, Axis.RA.pulseMillis(run.frames(), i) / 1000);
    }
    return longest;
  }
}
