package io.github.roundstar.stars;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Finds connected pixels above a threshold in a plane whose background was taken off. The plane is
 * smoothed with [1 2 1; 2 4 2; 1 2 1] / 16, zero outside; pixels that touch at a corner are
 * connected. All cores look for them in strips of rows.
 */
final class Segments {
  private static final int MOST_SEGMENTS = 200_000;
  private static final int MOST_PIXELS = 100_000;
  private static final int STRIP_ROWS = 64;

  /** The threshold of one row of pixels. */
  interface Threshold {
    /** Fills in the threshold of each pixel of row {@code y}. */
    void line(int y, float[] line);
  }

  private final Plane plane;
  private final int width;
  private final int height;
  private final Marks above;

  private Segments(Plane plane, Threshold threshold) {
    this.plane = plane;
    width = plane.width();
    height = plane.height();
    above = new Marks(width, height);
    IntStream.rangeClosed(0, (height - 1) / STRIP_ROWS)
        .parallel()
        .forEach(strip -> mark(strip * STRIP_ROWS, threshold));
  }

  private void mark(int fromRow, Threshold threshold) {
    float[] sums = new float[width + 2];
    float[] limit = new float[width];
    for (int y = fromRow; y < Math.min(height, fromRow + STRIP_ROWS); y++) {
      threshold.line(y, limit);
      plane.sumOfThreeRows(y, sums);
      for (int x = 0; x < width; x++) {
        float smooth = sums[x] + 2 * sums[x + 1] + sums[x + 2];
        if (smooth > 16 * limit[x]) {
          above.set(x, y);
        }
      }
    }
  }

  /** All segments of at least so many pixels, in the order of their first pixel. */
  static List<Segment> of(Plane plane, Threshold threshold, int fewestPixels) {
    Segments search = new Segments(plane, threshold);
    List<Segment> found = new ArrayList<>();
    int[] stack = new int[1024];
    for (int first = search.above.next(0);
        first >= 0 && found.size() < MOST_SEGMENTS;
        first = search.above.next(first)) {
      stack = search.collect(first, stack);
      int size = search.collected;
      if (size >= fewestPixels && size <= MOST_PIXELS) {
        found.add(search.segment(Arrays.copyOf(stack, size)));
      }
    }
    return found;
  }

  private int collected;

  /** Floods from a pixel and clears what it visits; the array holds all pixels in the end. */
  private int[] collect(int first, int[] found) {
    int[] pixels = found;
    collected = 1;
    pixels[0] = first;
    above.clear(first % width, first / width);
    for (int next = 0; next < collected; next++) {
      int x = pixels[next] % width;
      int y = pixels[next] / width;
      for (int ny = Math.max(0, y - 1); ny <= Math.min(height - 1, y + 1); ny++) {
        for (int nx = Math.max(0, x - 1); nx <= Math.min(width - 1, x + 1); nx++) {
          if (above.clear(nx, ny)) {
            if (collected == pixels.length) {
              pixels = Arrays.copyOf(pixels, 2 * pixels.length);
            }
            pixels[collected++] = ny * width + nx;
          }
        }
      }
    }
    return pixels;
  }

  private Segment segment(int[] pixels) {
    double sum = 0;
    double x = 0;
    double y = 0;
    double peak = Double.NEGATIVE_INFINITY;
    int peakIndex = pixels[0];
    boolean atEdge = false;
    for (int at : pixels) {
      int px = at % width;
      int py = at / width;
      double value = smoothed(plane, px, py);
      sum += value;
      x += value * px;
      y += value * py;
      if (value > peak) {
        peak = value;
        peakIndex = at;
      }
      atEdge |= px == 0 || py == 0 || px == width - 1 || py == height - 1;
    }
    x /= sum;
    y /= sum;
    double xx = 0;
    double yy = 0;
    double xy = 0;
    for (int at : pixels) {
      double dx = at % width - x;
      double dy = at / width - y;
      double value = smoothed(plane, at % width, at / width) / sum;
      xx += value * dx * dx;
      yy += value * dy * dy;
      xy += value * dx * dy;
    }
    return new Segment(pixels, x, y, xx, yy, xy, peak, peakIndex, atEdge);
  }

  /** Value of the smoothed plane. */
  static double smoothed(Plane plane, int x, int y) {
    double sum = 0;
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        int nx = x + dx;
        int ny = y + dy;
        if (nx >= 0 && ny >= 0 && nx < plane.width() && ny < plane.height()) {
          sum += plane.at(nx, ny) * (2 - Math.abs(dx)) * (2 - Math.abs(dy));
        }
      }
    }
    return sum / 16;
  }
}
