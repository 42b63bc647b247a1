package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;

/**
 * One run's motion in right ascension, ready for the search for periodic error.
 *
 * @param runId number of the run
 * @param motion motion of the mount with the corrections taken out, times 1 / {@code cosine}
 *     [arcsec]
 * @param exposureSeconds guide exposure; 0 when unknown [s]
 * @param cadenceSeconds median time between frames [s]
 * @param cosine cosine of the declination; what is left at 1 stays on the sky
 * @param originSeconds time that phases count from: the run's first used frame [s]
 * @param responseMeasured whether the pulses are taken to push as measured, not as declared
 * @param swings number of {@link SlowSwing} columns that the motion needs beside its drift; 0 for a
 *     run that is long enough to tell its sinusoids
 */
public record AxisRun(
    int runId,
    MotionSeries motion,
    double exposureSeconds,
    double cadenceSeconds,
    double cosine,
    double originSeconds,
    boolean responseMeasured,
    int swings) {
  /** A run whose pulses are taken to push as declared. */
  public AxisRun(
      int runId,
      MotionSeries motion,
      double exposureSeconds,
      double cadenceSeconds,
      double cosine,
      double originSeconds) {
    this(runId, motion, exposureSeconds, cadenceSeconds, cosine, originSeconds, false, 0);
  }

  /**
   * A run's motion on the sky, brought to the axis.
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

  /** The same run with its motion made out differently, pulses still pushing as declared. */
  AxisRun with(MotionSeries other) {
    return new AxisRun(
        runId, other, exposureSeconds, cadenceSeconds, cosine, originSeconds, false, swings);
  }

  /** The same run with so many columns of slow swings beside its drift. */
  AxisRun swinging(int columns) {
    return new AxisRun(
        runId,
        motion,
        exposureSeconds,
        cadenceSeconds,
        cosine,
        originSeconds,
        responseMeasured,
        columns);
  }

  /** The same run without its jolts. */
  AxisRun without(JoltFree quiet) {
    return new AxisRun(
        runId,
        quiet.kept(motion),
        exposureSeconds,
        cadenceSeconds,
        cosine,
        originSeconds,
        responseMeasured,
        swings);
  }

  /** The same run with pulses pushing as strongly as was measured, times the declared strength. */
  AxisRun answering(double oneWay, double otherWay) {
    return new AxisRun(
        runId,
        motion.answering(oneWay, otherWay),
        exposureSeconds,
        cadenceSeconds,
        cosine,
        originSeconds,
        true,
        swings);
  }
}
