package io.github.roundstar.stars;

/**
 * One channel of an image. It takes the caller's array over instead of copying it, since an image
 * is large; nobody else may write to it.
 */
public final class Plane {
  private final int width;
  private final int height;
  private final float[] pixels;
  private final Sampling sampling;

  private Plane(int width, int height, float[] pixels, Sampling sampling) {
    this.width = width;
    this.height = height;
    this.pixels = pixels;
    this.sampling = sampling;
  }

  /**
   * A monochrome image.
   *
   * @param pixels row by row; NaN where there is no value
   */
  public static Plane of(int width, int height, float[] pixels) {
    if (width < 1 || height < 1 || pixels.length != (long) width * height) {
      throw new IllegalArgumentException(pixels.length + " pixels for " + width + " x " + height);
    }
    return new Plane(width, height, pixels, Sampling.ALL);
  }

  /**
   * The green channel of a colour mosaic: half of the pixels, like the fields of one colour of a
   * chessboard. The others are filled with the mean of their neighbours, which detection needs; the
   * shapes are measured on true green pixels only.
   */
  public static Plane ofMosaic(int width, int height, float[] pixels, Sampling green) {
    Plane plane = new Plane(width, height, of(width, height, pixels).pixels, green);
    plane.fillOtherColours();
    return plane;
  }

  private void fillOtherColours() {
    for (int y = 0; y < height; y++) {
      for (int x = sampling.takes(0, y) ? 1 : 0; x < width; x += 2) {
        float sum = 0;
        int n = 0;
        if (x > 0) {
          sum += pixels[y * width + x - 1];
          n++;
        }
        if (x < width - 1) {
          sum += pixels[y * width + x + 1];
          n++;
        }
        if (y > 0) {
          sum += pixels[(y - 1) * width + x];
          n++;
        }
        if (y < height - 1) {
          sum += pixels[(y + 1) * width + x];
          n++;
        }
        pixels[y * width + x] = n == 0 ? Float.NaN : sum / n;
      }
    }
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** Value of a pixel, both counted from 0. */
  float at(int x, int y) {
    return pixels[y * width + x];
  }

  /** Which pixels were really measured. */
  Sampling sampling() {
    return sampling;
  }

  /** Takes levels off the pixels of a row. */
  void lowerRow(int y, float[] level) {
    int from = y * width;
    for (int x = 0; x < width; x++) {
      pixels[from + x] -= level[x];
    }
  }

  /**
   * Each pixel of a row twice, with those above and below it; zero outside.
   *
   * @param to gets the sums, its first element left out
   */
  void sumOfThreeRows(int y, float[] to) {
    int here = y * width - 1;
    if (y > 0 && y < height - 1) {
      for (int x = 1; x <= width; x++) {
        to[x] = pixels[here - width + x] + 2 * pixels[here + x] + pixels[here + width + x];
      }
      return;
    }
    for (int x = 1; x <= width; x++) {
      float above = y > 0 ? pixels[here - width + x] : 0;
      float below = y < height - 1 ? pixels[here + width + x] : 0;
      to[x] = above + 2 * pixels[here + x] + below;
    }
  }
}
