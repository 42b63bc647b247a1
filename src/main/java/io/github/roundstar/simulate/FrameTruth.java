package io.github.roundstar.simulate;

import java.util.EnumMap;
import java.util.Map;

/**
 * What really happened, frame by frame: offset = motion - correction - set point + error, each a
 * mean over the exposure, on the sky, east and north positive [arcsec]. A tilted camera sees the
 * offset turned.
 */
public final class FrameTruth {
  /** The figures kept. */
  public enum Column {
    /** Motion of the star with all corrections taken out, from about zero at the first frame. */
    MOTION_RA,
    /** The same in declination. */
    MOTION_DEC,
    /** The part of the motion that is drift: polar axis, refraction, tracking rate, flexure. */
    STEADY_RA,
    /** The same in declination. */
    STEADY_DEC,
    /** The part of the motion that is a random walk. */
    WANDER_RA,
    /** The same in declination. */
    WANDER_DEC,
    /** Where executed corrections have brought the mount. */
    CORRECTION_RA,
    /** The same in declination. */
    CORRECTION_DEC,
    /** Sum of the shifts of the set point. */
    SET_POINT_RA,
    /** The same in declination. */
    SET_POINT_DEC,
    /** Measurement error: image motion and centroid noise. */
    ERROR_RA,
    /** The same in declination. */
    ERROR_DEC,
    /** The part of the error that is image motion by the air. */
    AIR_RA,
    /** The same in declination. */
    AIR_DEC,
    /**
     * How far the declination motor is ahead of the tube at the exposure's end, in the motor's
     * frame (plus north for a tube west of the pier).
     */
    DEC_LAG
  }

  private final Map<Column, double[]> columns = new EnumMap<>(Column.class);
  private final int size;

  FrameTruth(int size) {
    this.size = size;
    for (Column column : Column.values()) {
      columns.put(column, new double[size]);
    }
  }

  void set(Column column, int i, double value) {
    columns.get(column)[i] = value;
  }

  void set(Column ra, Column dec, int i, Offset value) {
    set(ra, i, value.ra());
    set(dec, i, value.dec());
  }

  /** Number of frames. */
  public int size() {
    return size;
  }

  /** One figure of one frame [arcsec]. */
  public double at(Column column, int i) {
    return columns.get(column)[i];
  }
}
