package io.github.roundstar.motion;

import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.Whitening;
import java.util.Arrays;
import java.util.Optional;

/** Motion of one axis in one run, sampled at the measured frames; immutable. */
public final class MotionSeries {
  private final double[] seconds;
  private final double[] arcsec;
  private final boolean[] startsPiece;
  private final double[] pushedOneWayArcsec;
  private final double[] pushedOtherWayArcsec;

  /** Motion that no pulse had a part in. */
  MotionSeries(double[] seconds, double[] arcsec, boolean[] startsPiece) {
    this(seconds, arcsec, startsPiece, new double[seconds.length], new double[seconds.length]);
  }

  MotionSeries(
      double[] seconds,
      double[] arcsec,
      boolean[] startsPiece,
      double[] pushedOneWayArcsec,
      double[] pushedOtherWayArcsec) {
    this.seconds = seconds;
    this.arcsec = arcsec;
    this.startsPiece = startsPiece;
    this.pushedOneWayArcsec = pushedOneWayArcsec;
    this.pushedOtherWayArcsec = pushedOtherWayArcsec;
  }

  /** Number of samples. */
  public int size() {
    return seconds.length;
  }

  /** Seconds since the run's start, ascending. */
  public double seconds(int i) {
    return seconds[i];
  }

  /** Motion, its zero arbitrary in every piece [arcsec]. */
  public double arcsec(int i) {
    return arcsec[i];
  }

  /** Whether an unknown step lies before sample {@code i}. */
  public boolean startsPiece(int i) {
    return startsPiece[i];
  }

  /** Number of pieces whose levels have nothing to do with each other. */
  int pieces() {
    int pieces = 0;
    for (int i = 0; i < startsPiece.length; i++) {
      pieces += i == 0 || startsPiece[i] ? 1 : 0;
    }
    return pieces;
  }

  /** Time from first to last sample [s]. */
  public double spanSeconds() {
    return size() == 0 ? 0 : seconds[size() - 1] - seconds[0];
  }

  /** The same motion multiplied by a factor: from the sky to the axis, say. */
  public MotionSeries times(double factor) {
    return new MotionSeries(
        seconds,
        scaled(arcsec, factor),
        startsPiece,
        scaled(pushedOneWayArcsec, factor),
        scaled(pushedOtherWayArcsec, factor));
  }

  /** The same run with pulses pushing so much more or less strongly than they were taken to. */
  MotionSeries answering(double oneWay, double otherWay) {
    double[] answered = arcsec.clone();
    for (int i = 0; i < answered.length; i++) {
      answered[i] +=
          (oneWay - 1) * pushedOneWayArcsec[i] - (otherWay - 1) * pushedOtherWayArcsec[i];
    }
    return new MotionSeries(
        seconds,
        answered,
        startsPiece,
        scaled(pushedOneWayArcsec, oneWay),
        scaled(pushedOtherWayArcsec, otherWay));
  }

  /**
   * Some of the samples.
   *
   * @param samples their indices, ascending
   * @param starts for every sample of the whole, whether the level is lost before it
   */
  MotionSeries at(int[] samples, boolean[] starts) {
    boolean[] kept = new boolean[samples.length];
    int next = 0;
    for (int k = 0; k < samples.length; k++) {
      for (; next <= samples[k]; next++) {
        kept[k] |= starts[next];
      }
    }
    return new MotionSeries(
        at(samples, seconds),
        at(samples, arcsec),
        kept,
        at(samples, pushedOneWayArcsec),
        at(samples, pushedOtherWayArcsec));
  }

  private static double[] at(int[] samples, double[] values) {
    return Arrays.stream(samples).mapToDouble(i -> values[i]).toArray();
  }

  /** A copy of the times [s]. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** A copy of the motion [arcsec]. */
  public double[] arcsec() {
    return arcsec.clone();
  }

  /** What pulses east or north are taken to have pushed by each sample, a copy [arcsec, &ge; 0]. */
  double[] pushedOneWayArcsec() {
    return pushedOneWayArcsec.clone();
  }

  /** What pulses west or south are taken to have pushed by each sample, a copy [arcsec, &ge; 0]. */
  double[] pushedOtherWayArcsec() {
    return pushedOtherWayArcsec.clone();
  }

  /** Wander and noise beside a linear model; nothing where {@link WanderNoise#fit} has none. */
  Optional<WanderNoise> wanderNoise(double[][] columns) {
    return WanderNoise.fit(seconds, startsPiece, arcsec, columns);
  }

  /** The same, looked for near those known. */
  Optional<WanderNoise> wanderNoise(double[][] columns, WanderNoise near) {
    return near.refit(seconds, startsPiece, arcsec, columns);
  }

  /** The filter that makes such a motion white. */
  Whitening whitening(WanderNoise wanderNoise) {
    return wanderNoise.whitening(seconds, startsPiece);
  }

  /** The motion made white. */
  double[] white(Whitening whitening) {
    return whitening.apply(arcsec);
  }

  private static double[] scaled(double[] values, double factor) {
    double[] scaled = values.clone();
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] *= factor;
    }
    return scaled;
  }

  /** A copy of the flags. */
  public boolean[] startsPiece() {
    return startsPiece.clone();
  }
}
