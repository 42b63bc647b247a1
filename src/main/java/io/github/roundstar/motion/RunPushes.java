package io.github.roundstar.motion;

import io.github.roundstar.motion.posterior.Pushes;

/**
 * What the pulses of a run push, at some of its frames. The column by unlikeness is a difference over
 * a small step: behind a play the directions' unlikeness also shows in where the motor stands.
 */
final class RunPushes implements Pushes {
  private static final double STEP = 0.01;

  private final ExposureTimes exposures;
  private final PulseTrain sent;
  private final double arcsecPerSecond;
  private final int[] frames;

  /**
   * Pushes.
   *
   * @param arcsecPerSecond declared speed of a pulse, on the sky or at the axis
   * @param frames which frames of the run are asked for
   */
  RunPushes(ExposureTimes exposures, PulseTrain sent, double arcsecPerSecond, int[] frames) {
    this.exposures = exposures;
    this.sent = sent;
    this.arcsecPerSecond = arcsecPerSecond;
    this.frames = frames;
  }

  @Override
  public double[][] columns(double width, double start, double unlikeness) {
    double[] oneWay;
    double[] otherWay;
    double[] balance;
    double[] slope;
    if (arcsecPerSecond == 0) {
      return new double[COLUMNS][frames.length];
    }
    if (width == 0) {
      oneWay = ExecutedPulses.seconds(exposures, sent, 1);
      otherWay = ExecutedPulses.seconds(exposures, sent, -1);
      balance = new double[oneWay.length];
      slope = new double[oneWay.length];
      for (int i = 0; i < balance.length; i++) {
        balance[i] = (1 + unlikeness) * oneWay[i] - (1 - unlikeness) * otherWay[i];
        slope[i] = oneWay[i] + otherWay[i];
      }
    } else {
      balance = balance(width, start, unlikeness);
      slope = balance(width, start, unlikeness + STEP);
      for (int i = 0; i < slope.length; i++) {
        slope[i] = (slope[i] - balance[i]) / STEP;
      }
    }
    double[][] columns = new double[COLUMNS][frames.length];
    for (int k = 0; k < frames.length; k++) {
      int i = frames[k];
      columns[0][k] = arcsecPerSecond * balance[i];
      columns[1][k] = i == 0 ? 0 : arcsecPerSecond * balance[i - 1];
      columns[2][k] = arcsecPerSecond * slope[i];
      columns[3][k] = i == 0 ? 0 : arcsecPerSecond * slope[i - 1];
    }
    return columns;
  }

  /** Pulse time that has reached the tube at every frame, each direction as strong as it is [s]. */
  private double[] balance(double width, double start, double unlikeness) {
    PulseTrain moved = sent.behind(new GearPlay(width / arcsecPerSecond, start, unlikeness));
    return ExecutedPulses.balance(exposures, moved, 1 + unlikeness, 1 - unlikeness);
  }
}
