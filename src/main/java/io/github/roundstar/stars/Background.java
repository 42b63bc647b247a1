package io.github.roundstar.stars;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;

/**
 * Level and noise of the sky on a mesh, bilinear between the meshes' centres. Each mesh is
 * median-filtered over its neighbours. The noise is measured where the level was taken off, so that
 * a slope of the sky is no noise.
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

  private Background(Plane plane) {
    columns = Math.max(1, plane.width() / MESH);
    rows = Math.max(1, plane.height() / MESH);
    meshWidth = (double) plane.width() / columns;
    meshHeight = (double) plane.height() / rows;
    level = new double[columns * rows];
    noise = new double[columns * rows];
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
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < columns; c++) {
        meshes[r * columns + c] = figure.applyAsDouble(Clipped.of(values(plane, c, r)));
      }
    }
    smooth(meshes, to);
  }

  private float[] values(Plane plane, int column, int row) {
    int fromX = (int) (column * meshWidth);
    int toX = (int) ((column + 1) * meshWidth);
    int fromY = (int) (row * meshHeight);
    int toY = (int) ((row + 1) * meshHeight);
    // An odd stride, so that a mosaic's rows take turns.
    int stride = Math.max(1, (toX - fromX) * (toY - fromY) / MOST_SAMPLES) | 1;
    float[] values = new float[(toX - fromX) * (toY - fromY) / stride + 1];
    int n = 0;
    for (int i = 0; i < (toX - fromX) * (toY - fromY); i += stride) {
      int x = fromX + i % (toX - fromX);
      int y = fromY + i / (toX - fromX);
      if (plane.sampling().takes(x, y) && Float.isFinite(plane.at(x, y))) {
        values[n++] = plane.at(x, y);
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
    float[] line = new float[plane.width()];
    for (int y = 0; y < plane.height(); y++) {
      line(level, y, line);
      for (int x = 0; x < line.length; x++) {
        plane.lower(x, y, line[x]);
      }
    }
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
    return median(level);
  }

  /** Median of the noise over the field. */
  double medianNoise() {
    return median(noise);
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private void line(double[] mesh, int y, float[] line) {
    double along = Math.max(0, Math.min(rows - 1, (y + 0.5) / meshHeight - 0.5));
    int r = Math.min(rows - 1, (int) along);
    int below = Math.min(rows - 1, r + 1);
    double share = along - r;
    int c = 0;
    double left = mix(mesh, r, below, 0, share);
    double right = mix(mesh, r, below, Math.min(columns - 1, 1), share);
    for (int x = 0; x < line.length; x++) {
      double across = Math.max(0, Math.min(columns - 1, (x + 0.5) / meshWidth - 0.5));
      while (c < Math.min(columns - 1, (int) across)) {
        c++;
        left = right;
        right = mix(mesh, r, below, Math.min(columns - 1, c + 1), share);
      }
      line[x] = (float) (left + (across - c) * (right - left));
    }
  }

  private double mix(double[] mesh, int row, int below, int column, double share) {
    double upper = mesh[row * columns + column];
    return upper + share * (mesh[below * columns + column] - upper);
  }

  private double between(double[] mesh, int x, int y) {
    double across = Math.max(0, Math.min(columns - 1, (x + 0.5) / meshWidth - 0.5));
    double along = Math.max(0, Math.min(rows - 1, (y + 0.5) / meshHeight - 0.5));
    int c = Math.min(columns - 1, (int) across);
    int r = Math.min(rows - 1, (int) along);
    int below = Math.min(rows - 1, r + 1);
    double left = mix(mesh, r, below, c, along - r);
    double right = mix(mesh, r, below, Math.min(columns - 1, c + 1), along - r);
    return left + (across - c) * (right - left);
  }
}
