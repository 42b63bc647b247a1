package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import java.util.Arrays;

/**
 * One run's motion in one axis with the corrections taken out.
 *
 * @param runId number of the run
 * @param motion motion of the mount, times 1 / {@code cosine} [arcsec]
 * @param exposureSeconds guide exposure; 0 when unknown [s]
 * @param cadenceSeconds median time between frames [s]
 * @param cosine cosine of the declination; what is left at 1 stays on the sky
 * @param originSeconds time that phases count from: the run's first used frame [s]
 * @param others what the motion would be less what it is if the pulses did something else, a
 *     standard deviation away in each of some directions that are independent of each other and the
 *     same in all runs of a night; none where they are taken to push as declared [arcsec]
 */
public record AxisRun(
    int runId,
    MotionSeries motion,
    double exposureSeconds,
    double cadenceSeconds,
    double cosine,
    double originSeconds,
    double[][] others) {
  /** A declared strength is mostly right to some 3 % either way; common practice, no source. */
  private static final double DECLARED_WITHIN = 0.03;

  private static final double[][] AS_DECLARED = {};

  /** A run whose pulses are taken to push as declared. */
  public AxisRun(
      int runId,
      MotionSeries motion,
      double exposureSeconds,
      double cadenceSeconds,
      double cosine,
      double originSeconds) {
    this(runId, motion, exposureSeconds, cadenceSeconds, cosine, originSeconds, AS_DECLARED);
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

  /** The others; those of a declared strength are one for each direction. */
  double[][] otherwise() {
    if (others.length > 0) {
      return others;
    }
    double[][] declared = {ToneColumns.byExcess(this, 0), ToneColumns.byExcess(this, 1)};
    for (double[] column : declared) {
      for (int i = 0; i < column.length; i++) {
        column[i] *= DECLARED_WITHIN;
      }
    }
    return declared;
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

  /** The same run with its motion made out differently, pulses as declared. */
  AxisRun with(MotionSeries other) {
    return with(other, AS_DECLARED);
  }

  /** The same run with its motion made out differently. */
  AxisRun with(MotionSeries other, double[][] others) {
    return new AxisRun(
        runId, other, exposureSeconds, cadenceSeconds, cosine, originSeconds, others);
  }

  /** The same run without its jolts. */
  AxisRun without(JoltFree quiet) {
    return with(
        quiet.kept(motion), Arrays.stream(others).map(quiet::kept).toArray(double[][]::new));
  }
}
