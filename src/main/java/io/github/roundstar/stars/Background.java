package io.github.roundstar.stars;

import io.github.roundstar.signal.Quantile;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Level and noise of the sky on a mesh, bilinear between the meshes' centres. Each mesh is
 * median-filtered over its neighbours. The noise is measured where the level was taken off, so that
 * a slope of the sky is no noise. Rows are worked on by all cores.
 */
final class Background {
  private static final int MESH = 64;
  private static final int MOST_SAMPLES = 1024;
  private final int columns;
  private final int rows;
  private final double meshWidth;
  private final double meshHeight;
  private final double[] level;
  private final double[] noise;

  /** First pixel of a row to the right of each mesh's centre, and behind them the width. */
  private final int[] firstPixel;

  /** How far each pixel of a row is from the mesh's centre at its left to the next, 0 to 1. */
  private final double[] share;

  private Background(Plane plane) {
    columns = Math.max(1, plane.width() / MESH);
    rows = Math.max(1, plane.height() / MESH);
    meshWidth = (double) plane.width() / columns;
    meshHeight = (double) plane.height() / rows;
    level = new double[columns * rows];
    noise = new double[columns * rows];
    firstPixel = new int[columns + 1];
    share = new double[plane.width()];
    Arrays.fill(firstPixel, 1, columns + 1, plane.width());
    int column = 0;
    for (int x = 0; x < share.length; x++) {
      double across = across(x);
      while (column < (int) across) {
        firstPixel[++column] = x;
      }
      share[x] = across - column;
    }
  }

  /** Place of a pixel between the meshes' centres, from 0 to the number of columns less 1. */
  private double across(int x) {
    return Math.max(0, Math.min(columns - 1, (x + 0.5) / meshWidth - 0.5));
  }

  private double along(int y) {
    return Math.max(0, Math.min(rows - 1, (y + 0.5) / meshHeight - 0.5));
  }

  /**
   * Measures the level, takes it off the plane's own pixels, and measures the noise of the rest.
   */
  static Background takenOff(Plane plane) {
    Background result = new Background(plane);
    result.measure(plane, Clipped::level, result.level);
    result.takeOff(plane);
    result.measure(plane, Clipped::sigma, result.noise);
    return result;
  }

  private void measure(Plane plane, ToDoubleFunction<Clipped> figure, double[] to) {
    double[] meshes = new double[to.length];
    IntStream.range(0, rows)
        .parallel()
        .forEach(
            r -> {
              for (int c = 0; c < columns; c++) {
                Clipped sky = Clipped.of(values(plane, c, r));
                meshes[r * columns + c] = figure.applyAsDouble(sky);
              }
            });
    smooth(meshes, to);
  }

  private float[] values(Plane plane, int column, int row) {
    // Whole numbers: a width that was divided first may end a pixel short of the plane's edge.
    int fromX = column * plane.width() / columns;
    int toX = (column + 1) * plane.width() / columns;
    int fromY = row * plane.height() / rows;
    int toY = (row + 1) * plane.height() / rows;
    // An odd stride, so that a mosaic's rows take turns.
    int stride = Math.max(1, (toX - fromX) * (toY - fromY) / MOST_SAMPLES) | 1;
    float[] values = new float[(toX - fromX) * (toY - fromY) / stride + 1];
    int n = 0;
    int x = fromX;
    int y = fromY;
    while (y < toY) {
      float value = plane.at(x, y);
      if (plane.sampling().takes(x, y) && Float.isFinite(value)) {
        values[n++] = value;
      }
      for (x += stride; x >= toX; x -= toX - fromX) {
        y++;
      }
    }
    return Arrays.copyOf(values, n);
  }

  /** Median over the mesh and its neighbours; a mesh without values takes its neighbours'. */
  private void smooth(double[] from, double[] to) {
    double[] near = new double[9];
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < columns; c++) {
        int n = 0;
        for (int y = Math.max(0, r - 1); y <= Math.min(rows - 1, r + 1); y++) {
          for (int x = Math.max(0, c - 1); x <= Math.min(columns - 1, c + 1); x++) {
            if (Double.isFinite(from[y * columns + x])) {
              near[n++] = from[y * columns + x];
            }
          }
        }
        Arrays.sort(near, 0, n);
        to[r * columns + c] = n == 0 ? 0 : (near[(n - 1) / 2] + near[n / 2]) / 2;
      }
    }
  }

  private void takeOff(Plane plane) {
    IntStream.range(0, plane.height())
        .parallel()
        .forEach(
            y -> {
              float[] line = new float[plane.width()];
              line(level, y, line);
              plane.lowerRow(y, line);
            });
  }

  /** Noise of the pixels of a row. */
  void noiseLine(int y, float[] line) {
    line(noise, y, line);
  }

  /** Noise of a pixel. */
  double noise(int x, int y) {
    return between(noise, x, y);
  }

  /** Median of the level over the field. */
  double medianLevel() {
    return Quantile.median(level);
  }

  /** Median of the noise over the field. */
  double medianNoise() {
    return Quantile.median(noise);
  }

  private void line(double[] mesh, int y, float[] line) {
    double along = along(y);
    int r = (int) along;
    int below = Math.min(rows - 1, r + 1);
    double right = mix(mesh, r, below, 0, along - r);
    for (int c = 0; c < columns; c++) {
      double left = right;
      right = mix(mesh, r, below, Math.min(columns - 1, c + 1), along - r);
      double rise = right - left;
      for (int x = firstPixel[c]; x < firstPixel[c + 1]; x++) {
        line[x] = (float) (left + share[x] * rise);
      }
    }
  }

  private double mix(double[] mesh, int row, int below, int column, double share) {
    double upper = mesh[row * columns + column];
    return upper + share * (mesh[below * columns + column] - upper);
  }

  private double between(double[] mesh, int x, int y) {
    double across = across(x);
    double along = along(y);
    int c = (int) across;
    int r = (int) along;
    int below = Math.min(rows - 1, r + 1);
    double left = mix(mesh, r, below, c, along - r);
    double right = mix(mesh, r, below, Math.min(columns - 1, c + 1), along - r);
    return left + (across - c) * (right - left);
  }
}
