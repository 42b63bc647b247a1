package io.github.roundstar.motion;

import io.github.roundstar.model.Frames;

/** One of the two directions in which the star is measured and the mount pushed. */
public enum Axis {
  /** East-west. */
  RA {
    @Override
    public double offsetArcsec(Frames frames, int i) {
      return frames.raArcsec(i);
    }

    @Override
    public double pulseMillis(Frames frames, int i) {
      return frames.raPulseMillis(i);
    }

    @Override
    public double ditherArcsec(Frames frames, int i) {
      return frames.ditherRaArcsec(i);
    }
  },
  /** North-south. */
  DEC {
    @Override
    public double offsetArcsec(Frames frames, int i) {
      return frames.decArcsec(i);
    }

    @Override
    public double pulseMillis(Frames frames, int i) {
      return frames.decPulseMillis(i);
    }

    @Override
    public double ditherArcsec(Frames frames, int i) {
      return frames.ditherDecArcsec(i);
    }
  };

  /** Offset of frame {@code i} on the sky [arcsec]. */
  public abstract double offsetArcsec(Frames frames, int i);

  /** Pulse sent after frame {@code i} [ms]. */
  public abstract double pulseMillis(Frames frames, int i);

  /** Shift of the set point that begins with frame {@code i} [arcsec]; NaN where unknown. */
  public abstract double ditherArcsec(Frames frames, int i);

  /** The axis across. */
  Axis other() {
    return this == RA ? DEC : RA;
  }
}
