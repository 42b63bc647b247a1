package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.GuideRun;
import java.time.Instant;
import java.util.List;

/**
 * By how much the camera's clock is off when exposures of several nights are dealt out to them. A
 * clock that is a day ahead moves each night's exposures onto the next night's log, where they may
 * well fit; so the offset is sought over the logs of all nights together, at whole half hours, as
 * {@link CameraClock} does within a night to five seconds.
 *
 * @param aheadSeconds offset that is taken off the camera's times [s]
 * @param certain whether every offset that would move the exposures to other nights fits clearly
 *     worse
 */
public record NightOffset(double aheadSeconds, boolean certain) {
  /** Offsets closer than that move no exposure to another night [s]. */
  private static final double SAME_NIGHT = 12 * 3600;

  /**
   * Compares the clocks.
   *
   * @param frames exposures of all nights in order of time
   * @param runs runs of all nights
   * @return clocks that agree, for certain, when there is nothing to compare
   */
  public static NightOffset of(List<ExposureFrame> frames, List<GuideRun> runs) {
    CameraClock.Night all = CameraClock.Night.of(frames, runs);
    if (all.empty()) {
      return new NightOffset(0, true);
    }
    double clearly = CameraClock.CLEARLY_BETTER * frames.size();
    int most = (int) (CameraClock.FARTHEST_SECONDS / CameraClock.HALF_HOUR);
    double[] scores = new double[2 * most + 1];
    int best = most;
    for (int i = 0; i < scores.length; i++) {
      scores[i] = all.score((i - most) * CameraClock.HALF_HOUR);
    }
    for (int i = 0; i < scores.length; i++) {
      boolean smaller = scores[i] == scores[best] && Math.abs(i - most) < Math.abs(best - most);
      best = scores[i] > scores[best] || smaller ? i : best;
    }
    best = scores[best] - scores[most] < clearly ? most : best;
    boolean certain = true;
    for (int i = 0; i < scores.length; i++) {
      boolean other = Math.abs(i - best) * CameraClock.HALF_HOUR > SAME_NIGHT;
      certain &= !other || scores[best] <= 0 || scores[best] - scores[i] >= clearly;
    }
    return new NightOffset((best - most) * CameraClock.HALF_HOUR, certain);
  }

  /** When, in the logs' clock, an exposure started. */
  public Instant inLog(Instant start) {
    return start.minusSeconds((long) aheadSeconds);
  }
}
