package io.github.roundstar.motion;

/** Motion of one axis in one run, sampled at the measured frames; immutable. */
public final class MotionSeries {
  private final double[] seconds;
  private final double[] arcsec;
  private final boolean[] startsPiece;

  MotionSeries(double[] seconds, double[] arcsec, boolean[] startsPiece) {
    this.seconds = seconds;
    this.arcsec = arcsec;
    this.startsPiece = startsPiece;
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
    double[] scaled = new double[arcsec.length];
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] = arcsec[i] * factor;
    }
    return new MotionSeries(seconds, scaled, startsPiece);
  }

  /** A copy of the times [s]. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** A copy of the motion [arcsec]. */
  public double[] arcsec() {
    return arcsec.clone();
  }

  /** A copy of the flags. */
  public boolean[] startsPiece() {
    return startsPiece.clone();
  }
}
