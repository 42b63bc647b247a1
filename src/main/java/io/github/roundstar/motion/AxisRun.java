package io.github.roundstar.motion;

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
 */
public record AxisRun(
    int runId,
    MotionSeries motion,
    double exposureSeconds,
    double cadenceSeconds,
    double cosine,
    double originSeconds) {
  /** Times since the origin [s]. */
  double[] phaseSeconds() {
    double[] seconds = motion.seconds();
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] -= originSeconds;
    }
    return seconds;
  }

  /** The same run with its motion made out differently. */
  AxisRun with(MotionSeries other) {
    return new AxisRun(runId, other, exposureSeconds, cadenceSeconds, cosine, originSeconds);
  }
}
