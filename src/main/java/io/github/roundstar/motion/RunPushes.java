package io.github.roundstar.motion;

import io.github.roundstar.motion.posterior.Pushes;

/**
 * What the pulses of a run push, at some of its frames. Behind a play the column by unlikeness is a
 * difference over a small step, since the directions' unlikeness also shows in where the motor
 * stands. Of an axis that sticks it is how strong the pulses are alone: which of them lets go does
 * not change smoothly.
 */
final class RunPushes implements Pushes {
  private static final double STEP = 0.01;

  private final ExposureTimes exposures;
  private final PulseTrain sent;
  private final double arcsecPerSecond;
  private final double partDelay;
  private final LostMotion.Kind kind;
  private final int[] frames;

  /**
   * Pushes.
   *
   * @param arcsecPerSecond declared speed of a pulse, on the sky or at the axis
   * @param partDelay delay of the second column [s]
   * @param kind what widths are those of: play of the gears, or an axis that sticks
   * @param frames which frames of the run are asked for
   */
  RunPushes(
      ExposureTimes exposures,
      PulseTrain sent,
      double arcsecPerSecond,
      double partDelay,
      LostMotion.Kind kind,
      int[] frames) {
    this.exposures = exposures;
    this.sent = sent;
    this.arcsecPerSecond = arcsecPerSecond;
    this.partDelay = partDelay;
    this.kind = kind;
    this.frames = frames;
  }

  @Override
  public double[][] columns(double width, double start, double unlikeness) {
    if (arcsecPerSecond == 0) {
      return new double[COLUMNS][frames.length];
    }
    double[] now = balance(width, start, unlikeness, 0);
    double[] later = balance(width, start, unlikeness, partDelay);
    double[] slope =
        kind == LostMotion.Kind.PLAY
            ? byUnlikeness(width, start, unlikeness, now)
            : ExecutedPulses.balance(exposures, moved(width, start, unlikeness), 0, 1, -1);
    double[][] columns = new double[COLUMNS][frames.length];
    for (int k = 0; k < frames.length; k++) {
      int i = frames[k];
      columns[0][k] = arcsecPerSecond * now[i];
      columns[1][k] = arcsecPerSecond * later[i];
      columns[2][k] = i == 0 ? 0 : arcsecPerSecond * now[i - 1];
      columns[3][k] = arcsecPerSecond * slope[i];
      columns[4][k] = i == 0 ? 0 : arcsecPerSecond * slope[i - 1];
    }
    return columns;
  }

  private double[] byUnlikeness(double width, double start, double unlikeness, double[] now) {
    double[] slope = balance(width, start, unlikeness + STEP, 0);
    for (int i = 0; i < slope.length; i++) {
      slope[i] = (slope[i] - now[i]) / STEP;
    }
    return slope;
  }

  /** Pulse time that has reached the tube at every frame, each direction as strong as it is [s]. */
  private double[] balance(double width, double start, double unlikeness, double delay) {
    return ExecutedPulses.balance(
        exposures, moved(width, start, unlikeness), delay, 1 + unlikeness, 1 - unlikeness);
  }

  private PulseTrain moved(double width, double start, double unlikeness) {
    return width == 0
        ? sent
        : sent.behind(
            (kind == LostMotion.Kind.PLAY
                    ? LostMotion.play(width / arcsecPerSecond, start, unlikeness)
                    : LostMotion.sticking(width / arcsecPerSecond, 2 * start - 1, unlikeness))
                .begin());
  }
}
