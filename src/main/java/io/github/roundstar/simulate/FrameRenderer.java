package io.github.roundstar.simulate;

import io.github.roundstar.formats.FitsWriter;
import io.github.roundstar.simulate.SimulatedExposure.Image;
import java.io.IOException;
import java.io.OutputStream;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Renders a small frame of invented stars as an exposure really was: the light follows the path.
 */
public final class FrameRenderer {
  private static final double SKY_ADU = 800;
  private static final double NOISE_ADU = 15;
  private static final int MOST_STEPS = 400;

  private FrameRenderer() {}

  /**
   * Writes the frame as FITS.
   *
   * @param out where to; stays open
   */
  public static void write(SimulatedNight night, SimulatedExposure exposure, OutputStream out)
      throws IOException {
    ExposurePlan.Optics optics = night.scenario().camera().optics();
    long seed = night.scenario().evening().seed();
    float[] pixels = new float[optics.widthPixels() * optics.heightPixels()];
    NoiseStream field = NoiseStream.of(seed, "star-field", 0);
    for (int star = 0; star < optics.stars(); star++) {
      double x = field.between(0.05, 0.95) * optics.widthPixels();
      double y = field.between(0.05, 0.95) * optics.heightPixels();
      double flux = 60_000 * StrictMath.exp(1.2 * field.gaussian());
      expose(exposure, optics, x, y, flux, pixels);
    }
    NoiseStream noise = NoiseStream.of(seed, "pixels-" + exposure.file(), exposure.run());
    for (int i = 0; i < pixels.length; i++) {
      double sigma = StrictMath.sqrt(NOISE_ADU * NOISE_ADU + Math.max(0, pixels[i]));
      pixels[i] += (float) (SKY_ADU + sigma * noise.gaussian());
    }
    FitsWriter.write(out, optics.widthPixels(), pixels, keywords(exposure, optics));
  }

  private static Map<String, Object> keywords(
      SimulatedExposure exposure, ExposurePlan.Optics optics) {
    Map<String, Object> keywords = new LinkedHashMap<>();
    keywords.put("DATE-OBS", exposure.start().toString().replace("Z", ""));
    keywords.put("EXPTIME", exposure.seconds());
    keywords.put("PIXSCALE", optics.arcsecPerPixel());
    keywords.put("POSANGLE", optics.positionAngleDegrees());
    keywords.put("OBJECT", "invented field");
    return keywords;
  }

  /** Adds a star's light along the path, turned about the centre as the field turns. */
  private static void expose(
      SimulatedExposure exposure,
      ExposurePlan.Optics optics,
      double x,
      double y,
      double flux,
      float[] pixels) {
    int n = exposure.path().size();
    int stride = (n + MOST_STEPS - 1) / MOST_STEPS;
    int steps = (n + stride - 1) / stride;
    double up = StrictMath.toRadians(optics.positionAngleDegrees());
    double sine = StrictMath.sin(up);
    double cosine = StrictMath.cos(up);
    double[] shape = shape(optics, exposure.blur(), x, y);
    for (int step = 0; step < n; step += stride) {
      double[] at = exposure.path().get(step);
      double turn = StrictMath.toRadians(exposure.turns().get(step) - exposure.turns().get(0));
      double fromX = x - optics.widthPixels() / 2.0;
      double fromY = y - optics.heightPixels() / 2.0;
      // Columns grow to the west when rows grow to the north.
      double right = (-at[0] * cosine + at[1] * sine) / optics.arcsecPerPixel();
      double above = (at[0] * sine + at[1] * cosine) / optics.arcsecPerPixel();
      spot(optics, x + right - turn * fromY, y + above + turn * fromX, flux / steps, shape, pixels);
    }
  }

  /** Covariance along rows and columns of a star image of perfect guiding [px2]. */
  private static double[] shape(ExposurePlan.Optics optics, Image blur, double x, double y) {
    Image sky =
        optics.image(x - optics.widthPixels() / 2.0, y - optics.heightPixels() / 2.0).plus(blur);
    double up = StrictMath.toRadians(optics.positionAngleDegrees());
    double s = StrictMath.sin(up);
    double c = StrictMath.cos(up);
    double square = optics.arcsecPerPixel() * optics.arcsecPerPixel();
    // Right lies at (east, north) = (-cos, sin), above at (sin, cos).
    return new double[] {
      (c * c * sky.ee() + s * s * sky.nn() - 2 * s * c * sky.en()) / square,
      (s * s * sky.ee() + c * c * sky.nn() + 2 * s * c * sky.en()) / square,
      (s * c * (sky.nn() - sky.ee()) + (s * s - c * c) * sky.en()) / square
    };
  }

  private static void spot(
      ExposurePlan.Optics optics, double x, double y, double flux, double[] m, float[] pixels) {
    double determinant = m[0] * m[1] - m[2] * m[2];
    double height = flux / (2 * Math.PI * StrictMath.sqrt(determinant));
    int reach = (int) Math.ceil(5 * StrictMath.sqrt(Math.max(m[0], m[1])));
    for (int py = Math.max(0, (int) y - reach);
        py <= Math.min(optics.heightPixels() - 1, (int) y + reach);
        py++) {
      for (int px = Math.max(0, (int) x - reach);
          px <= Math.min(optics.widthPixels() - 1, (int) x + reach);
          px++) {
        double dx = px - x;
        double dy = py - y;
        double square = (m[1] * dx * dx - 2 * m[2] * dx * dy + m[0] * dy * dy) / determinant;
        pixels[py * optics.widthPixels() + px] += (float) (height * StrictMath.exp(-square / 2));
      }
    }
  }
}
