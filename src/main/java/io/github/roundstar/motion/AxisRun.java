package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;

/**
 * One run's motion in one axis with the corrections taken out.
 *
 * @param runId number of the run
 * @param motion motion of the mount, times 1 / {@code cosine} [arcsec]
 * @param exposureSeconds guide exposure; 0 when unknown [s]
 * @param cadenceSeconds median time between frames [s]
 * @param cosine cosine of the declination; what is left at 1 stays on the sky
 * @param originSeconds time that phases count from: the run's first used frame [s]
 * @param unsure how uncertain the strength of the pulses is that was taken out
 */
public record AxisRun(
    int runId,
    MotionSeries motion,
    double exposureSeconds,
    double cadenceSeconds,
    double cosine,
    double originSeconds,
    Unsure unsure) {
  /**
   * Standard deviations of the strength of pulses, as shares of the one taken.
   *
   * @param mean of the mean of both directions
   * @param difference of half their difference
   */
  public record Unsure(double mean, double difference) {
    /**
     * Pulses as declared: the mount's true strength is within some 3 % in either direction; common
     * practice, no source.
     */
    public static final Unsure DECLARED = new Unsure(0.021, 0.021);
  }

  /** A run whose pulses are taken to push as declared. */
  public AxisRun(
      int runId,
      MotionSeries motion,
      double exposureSeconds,
      double cadenceSeconds,
      double cosine,
      double originSeconds) {
    this(runId, motion, exposureSeconds, cadenceSeconds, cosine, originSeconds, Unsure.DECLARED);
  }

  /**
   * A run's motion on the sky, pulses as declared, brought to the axis.
   *
   * @param cosine cosine of the declination; 1 to stay on the sky
   */
  public static AxisRun of(GuideRun run, MotionSeries sky, double cosine) {
    return new AxisRun(
        run.id(),
        sky.times(1 / cosine),
        run.camera().exposureSeconds().orElse(0),
        Cadence.medianSeconds(run.frames()).orElse(0),
        cosine,
        firstUsed(run.frames()));
  }

  private static double firstUsed(Frames frames) {
    for (int i = 0; i < frames.size(); i++) {
      if (frames.state(i) == FrameState.USED) {
        return frames.timeSeconds(i);
      }
    }
    return frames.size() == 0 ? 0 : frames.timeSeconds(0);
  }

  /** Times since the origin [s]. */
  double[] phaseSeconds() {
    double[] seconds = motion.seconds();
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] -= originSeconds;
    }
    return seconds;
  }

  /** The same run with its motion made out differently. */
  AxisRun with(MotionSeries other, Unsure otherwise) {
    return new AxisRun(
        runId, other, exposureSeconds, cadenceSeconds, cosine, originSeconds, otherwise);
  }

  /** The same run without its jolts. */
  AxisRun without(JoltFree quiet) {
    return with(quiet.kept(motion), unsure);
  }
}
