package io.github.roundstar.stars;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.BiFunction;

/** Invented star fields of known ellipses, noise and background, for the tests. */
final class StarField {
  private static final double FWHM_PER_SIGMA = 2.3548200450309493;

  final int width;
  final int height;
  final float[] pixels;
  final List<double[]> centres = new ArrayList<>();
  private final Random random;
  private final double noise;

  StarField(int width, int height, double noise, long seed) {
    this.width = width;
    this.height = height;
    this.noise = noise;
    this.pixels = new float[width * height];
    this.random = new Random(seed);
  }

  /** Covariance (xx, yy, xy) of a Gaussian; the angle of its long axis is from +x towards +y. */
  static double[] ellipse(double fwhm, double elongation, double angleDegrees) {
    double minor = fwhm / FWHM_PER_SIGMA / Math.sqrt(elongation);
    double major = minor * elongation;
    double c = Math.cos(Math.toRadians(angleDegrees));
    double s = Math.sin(Math.toRadians(angleDegrees));
    return new double[] {
      major * major * c * c + minor * minor * s * s,
      major * major * s * s + minor * minor * c * c,
      (major * major - minor * minor) * s * c
    };
  }

  /** Height of a star of this signal to noise: SNR&sup2; = A&sup2; pi a b / sigma&sup2;. */
  double amplitude(double snr, double[] covariance) {
    double area = Math.sqrt(covariance[0] * covariance[1] - covariance[2] * covariance[2]);
    return snr * noise / Math.sqrt(Math.PI * area);
  }

  /** Stars on a jittered grid, so that none blend. */
  StarField stars(int columns, int rows, double snr, BiFunction<Double, Double, double[]> shape) {
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < columns; c++) {
        double x = (c + 0.5 + 0.15 * (2 * random.nextDouble() - 1)) * width / columns;
        double y = (r + 0.5 + 0.15 * (2 * random.nextDouble() - 1)) * height / rows;
        double[] covariance = shape.apply(x, y);
        star(x, y, amplitude(snr, covariance), covariance);
      }
    }
    return this;
  }

  StarField star(double x, double y, double amplitude, double[] covariance) {
    centres.add(new double[] {x, y});
    double determinant = covariance[0] * covariance[1] - covariance[2] * covariance[2];
    int reach = (int) Math.ceil(6 * Math.sqrt(Math.max(covariance[0], covariance[1])));
    for (int py = Math.max(0, (int) y - reach); py <= Math.min(height - 1, (int) y + reach); py++) {
      for (int px = Math.max(0, (int) x - reach);
          px <= Math.min(width - 1, (int) x + reach);
          px++) {
        double dx = px - x;
        double dy = py - y;
        double square =
            (covariance[1] * dx * dx - 2 * covariance[2] * dx * dy + covariance[0] * dy * dy)
                / determinant;
        pixels[py * width + px] += (float) (amplitude * Math.exp(-square / 2));
      }
    }
    return this;
  }

  /** Adds a sloping sky and noise: that of the sky, and the stars' own at 1 electron per adu. */
  Plane underSky(double level, double slope) {
    return Plane.of(width, height, exposed(level, slope));
  }

  float[] exposed(double level, double slope) {
    float[] image = pixels.clone();
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int at = y * width + x;
        double sky = level + slope * x / width + slope / 2 * y / height;
        image[at] += (float) (sky + noise * random.nextGaussian());
      }
    }
    return image;
  }
}
