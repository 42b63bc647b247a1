package io.github.roundstar.model;

import java.util.Arrays;

/**
 * The frames of a run as columns, in order of time. A view made by {@link #slice} shares the
 * columns of the whole; nothing can write to either.
 */
public final class Frames {
  private final double[] timeSeconds;
  private final double[] raArcsec;
  private final double[] decArcsec;
  private final double[] raPulseMillis;
  private final double[] decPulseMillis;
  private final double[] snr;
  private final double[] fluxAdu;
  private final double[] ditherRaArcsec;
  private final double[] ditherDecArcsec;
  private final byte[] state;
  private final boolean[] ditherStart;
  private final int from;
  private final int size;

  Frames(FramesBuilder columns) {
    size = columns.size();
    from = 0;
    timeSeconds = columns.timeSeconds.trimmed(size);
    raArcsec = columns.raArcsec.trimmed(size);
    decArcsec = columns.decArcsec.trimmed(size);
    raPulseMillis = columns.raPulseMillis.trimmed(size);
    decPulseMillis = columns.decPulseMillis.trimmed(size);
    snr = columns.snr.trimmed(size);
    fluxAdu = columns.fluxAdu.trimmed(size);
    ditherRaArcsec = columns.ditherRaArcsec.trimmed(size);
    ditherDecArcsec = columns.ditherDecArcsec.trimmed(size);
    state = Arrays.copyOf(columns.state, size);
    ditherStart = Arrays.copyOf(columns.ditherStart, size);
    for (int i = 1; i < size; i++) {
      if (!(timeSeconds[i] > timeSeconds[i - 1])) {
        throw new IllegalArgumentException(
            "time [" + i + "] = " + timeSeconds[i] + " s does not follow " + timeSeconds[i - 1]);
      }
    }
  }

  private Frames(Frames whole, int from, int size) {
    this.timeSeconds = whole.timeSeconds;
    this.raArcsec = whole.raArcsec;
    this.decArcsec = whole.decArcsec;
    this.raPulseMillis = whole.raPulseMillis;
    this.decPulseMillis = whole.decPulseMillis;
    this.snr = whole.snr;
    this.fluxAdu = whole.fluxAdu;
    this.ditherRaArcsec = whole.ditherRaArcsec;
    this.ditherDecArcsec = whole.ditherDecArcsec;
    this.state = whole.state;
    this.ditherStart = whole.ditherStart;
    this.from = from;
    this.size = size;
  }

  /** Number of frames. */
  public int size() {
    return size;
  }

  /** Frames {@code begin} up to but not including {@code end}, as a view. */
  public Frames slice(int begin, int end) {
    if (begin < 0 || begin > end || end > size) {
      throw new IllegalArgumentException("slice " + begin + " to " + end + " of " + size);
    }
    return new Frames(this, from + begin, end - begin);
  }

  /** Middle of the guide exposure, seconds since the run's start; ascending. */
  public double timeSeconds(int i) {
    return timeSeconds[index(i)];
  }

  /** Offset east on the sky [arcsec]; NaN where not measured. */
  public double raArcsec(int i) {
    return raArcsec[index(i)];
  }

  /** Offset north [arcsec]; NaN where not measured. */
  public double decArcsec(int i) {
    return decArcsec[index(i)];
  }

  /** Whether the log has pulses at all. */
  public boolean hasPulses() {
    return raPulseMillis != null && decPulseMillis != null;
  }

  /** Pulse east sent after this frame [ms]; 0 where the log leaves it out. */
  public double raPulseMillis(int i) {
    return valueOr(raPulseMillis, i, 0);
  }

  /** Pulse north sent after this frame [ms]; 0 where the log leaves it out. */
  public double decPulseMillis(int i) {
    return valueOr(decPulseMillis, i, 0);
  }

  /** Signal to noise of the guide star; NaN where not logged. */
  public double snr(int i) {
    return valueOr(snr, i, Double.NaN);
  }

  /** Flux of the guide star [adu]; NaN where not logged. */
  public double fluxAdu(int i) {
    return valueOr(fluxAdu, i, Double.NaN);
  }

  /** Shift of the set point to the east that begins with this frame [arcsec]; NaN where unknown. */
  public double ditherRaArcsec(int i) {
    return valueOr(ditherRaArcsec, i, Double.NaN);
  }

  /**
   * Shift of the set point to the north that begins with this frame [arcsec]; NaN where unknown.
   */
  public double ditherDecArcsec(int i) {
    return valueOr(ditherDecArcsec, i, Double.NaN);
  }

  /** What became of the frame. */
  public FrameState state(int i) {
    return FramesBuilder.STATES[state[index(i)]];
  }

  /** Whether this is the first frame against a new set point, lost or not. */
  public boolean ditherStart(int i) {
    return ditherStart[index(i)];
  }

  /** Whether both offsets were measured and are finite. */
  public boolean measured(int i) {
    int at = index(i);
    return Double.isFinite(raArcsec[at]) && Double.isFinite(decArcsec[at]);
  }

  private double valueOr(double[] column, int i, double otherwise) {
    int at = index(i);
    return column == null ? otherwise : column[at];
  }

  private int index(int i) {
    if (i < 0 || i >= size) {
      throw new IndexOutOfBoundsException("frame " + i + " of " + size);
    }
    return from + i;
  }
}
