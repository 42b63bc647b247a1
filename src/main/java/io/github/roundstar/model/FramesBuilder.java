package io.github.roundstar.model;

import java.util.Arrays;

/**
 * Collects frames row by row. Only the columns that a log has take memory; the others read as
 * documented in {@link Frames}.
 */
public final class FramesBuilder {
  static final FrameState[] STATES = FrameState.values();

  final Column timeSeconds = new Column(Double.NaN);
  final Column raArcsec = new Column(Double.NaN);
  final Column decArcsec = new Column(Double.NaN);
  final Column raPulseMillis = new Column(0);
  final Column decPulseMillis = new Column(0);
  final Column snr = new Column(Double.NaN);
  final Column fluxAdu = new Column(Double.NaN);
  final Column ditherRaArcsec = new Column(Double.NaN);
  final Column ditherDecArcsec = new Column(Double.NaN);
  byte[] state = new byte[64];
  boolean[] ditherStart = new boolean[64];
  private int size;
  private boolean built;

  /** Begins a new frame, state {@link FrameState#USED}, not a dither. */
  public FramesBuilder add(double seconds, double ra, double dec) {
    if (size == state.length) {
      state = Arrays.copyOf(state, size + size / 2);
      ditherStart = Arrays.copyOf(ditherStart, size + size / 2);
    }
    timeSeconds.set(size, seconds);
    raArcsec.set(size, ra);
    decArcsec.set(size, dec);
    size++;
    return this;
  }

  /**
   * Pulses of the frame last added [ms]; NaN counts as none. A log with no pulse column never calls
   * this.
   */
  public FramesBuilder pulses(double raMillis, double decMillis) {
    raPulseMillis.set(size - 1, Double.isNaN(raMillis) ? 0 : raMillis);
    decPulseMillis.set(size - 1, Double.isNaN(decMillis) ? 0 : decMillis);
    return this;
  }

  /** Brightness of the guide star in the frame last added. */
  public FramesBuilder star(double snrValue, double adu) {
    snr.set(size - 1, snrValue);
    fluxAdu.set(size - 1, adu);
    return this;
  }

  /**
   * Marks the frame last added as the first against a new set point, shifted by these, NaN where
   * unknown [arcsec].
   */
  public FramesBuilder dither(double eastArcsec, double northArcsec) {
    ditherStart[size - 1] = true;
    ditherRaArcsec.set(size - 1, eastArcsec);
    ditherDecArcsec.set(size - 1, northArcsec);
    return this;
  }

  /** State of the frame last added. */
  public FramesBuilder state(FrameState value) {
    return state(size - 1, value);
  }

  /** State of an earlier frame. */
  public FramesBuilder state(int i, FrameState value) {
    state[i] = (byte) value.ordinal();
    return this;
  }

  /** Seconds of an earlier frame. */
  public double timeSeconds(int i) {
    return timeSeconds.values[i];
  }

  /** Offset east of an earlier frame [arcsec]; NaN where not measured. */
  public double raArcsec(int i) {
    return raArcsec.values[i];
  }

  /** Offset north of an earlier frame [arcsec]; NaN where not measured. */
  public double decArcsec(int i) {
    return decArcsec.values[i];
  }

  /** State of an earlier frame. */
  public FrameState state(int i) {
    return STATES[state[i]];
  }

  /** Whether an earlier frame is the first against a new set point. */
  public boolean ditherStart(int i) {
    return ditherStart[i];
  }

  /** Frames so far. */
  public int size() {
    return size;
  }

  /**
   * The finished columns. The builder gives its columns away, since a long night is large, and
   * cannot be used again.
   *
   * @throws IllegalArgumentException if the times do not ascend
   * @throws IllegalStateException if it was built before
   */
  public Frames build() {
    if (built) {
      throw new IllegalStateException("these frames were built before");
    }
    built = true;
    return new Frames(this);
  }

  /** A growing column that takes no memory until its first value. */
  static final class Column {
    private final double otherwise;
    private double[] values;
    private int filled;

    Column(double otherwise) {
      this.otherwise = otherwise;
    }

    void set(int i, double value) {
      if (values == null) {
        values = new double[Math.max(64, i + 1)];
      } else if (i >= values.length) {
        values = Arrays.copyOf(values, Math.max(i + 1, values.length + values.length / 2));
      }
      if (i > filled) {
        Arrays.fill(values, filled, i, otherwise);
      }
      values[i] = value;
      filled = Math.max(filled, i + 1);
    }

    double[] trimmed(int size) {
      if (values == null) {
        return null;
      }
      double[] result = values.length == size ? values : Arrays.copyOf(values, size);
      values = null;
      if (filled < size) {
        Arrays.fill(result, filled, size, otherwise);
      }
      return result;
    }
  }
}
