package io.github.roundstar.worlds;

import java.util.Arrays;

/**
 * Where the guide star truly was, row for row of the guide table: exposure [s since the start of
 * the log], true offset from the set point averaged over it, and what the measurement added to that
 * (arcsec on the sky, east and north; before the camera's small turn).
 */
public final class StarTruth {
  private int size;
  private double[] from = new double[1024];
  private double[] to = new double[1024];
  private double[] east = new double[1024];
  private double[] north = new double[1024];
  private double[] errorEast = new double[1024];
  private double[] errorNorth = new double[1024];

  void add(
      double fromSeconds,
      double toSeconds,
      double e,
      double n,
      double noiseEast,
      double noiseNorth) {
    if (size == from.length) {
      int room = 2 * size;
      from = Arrays.copyOf(from, room);
      to = Arrays.copyOf(to, room);
      east = Arrays.copyOf(east, room);
      north = Arrays.copyOf(north, room);
      errorEast = Arrays.copyOf(errorEast, room);
      errorNorth = Arrays.copyOf(errorNorth, room);
    }
    from[size] = fromSeconds;
    to[size] = toSeconds;
    east[size] = e;
    north[size] = n;
    errorEast[size] = noiseEast;
    errorNorth[size++] = noiseNorth;
  }

  /** Rows, as many as the guide table has. */
  public int size() {
    return size;
  }

  public double exposureStartSeconds(int row) {
    return from[row];
  }

  public double exposureEndSeconds(int row) {
    return to[row];
  }

  /** Star minus set point, averaged over the exposure, without air and camera. */
  public double eastArcsec(int row) {
    return east[row];
  }

  public double northArcsec(int row) {
    return north[row];
  }

  /** What air and camera added; NaN where the star was lost. */
  public double noiseEastArcsec(int row) {
    return errorEast[row];
  }

  public double noiseNorthArcsec(int row) {
    return errorNorth[row];
  }
}
