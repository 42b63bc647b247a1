package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.ExposureReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.simulate.ExposureTableWriter;
import io.github.roundstar.simulate.Exposures;
import io.github.roundstar.simulate.SimulatedNight;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The main camera of a played night: what it adds to the scenario and to the equipment file, and
 * its measured exposures as the tool reads them.
 */
final class PlayedCamera {
  /** Width of a round star [arcsec]. */
  static final double FWHM_ARCSEC = 2.4;

  private static final double SIGMA_ARCSEC = FWHM_ARCSEC / 2.3548;
  private static final int WIDTH = 2000;
  private static final int HEIGHT = 1334;
  private static final double SCALE = 3;

  final int seconds;
  String optics = "";
  double guideStarEastArcmin;
  double guideStarNorthArcmin;

  PlayedCamera(int seconds) {
    this.seconds = seconds;
  }

  /** Standard deviation that draws a round star out to an elongation [arcsec]. */
  static double sigmaArcsec(double elongation) {
    return SIGMA_ARCSEC * Math.sqrt(elongation * elongation - 1);
  }

  /** Even trail that does the same: its variance is a twelfth of its square [arcsec]. */
  static double trailArcsec(double elongation) {
    return Math.sqrt(12) * sigmaArcsec(elongation);
  }

  /** From the middle of the field to a corner [arcsec]. */
  static double cornerArcsec() {
    return SCALE * Math.hypot(WIDTH, HEIGHT) / 2;
  }

  /** Adds one line to what the camera does. */
  void with(String key, double value) {
    optics += String.format(Locale.ROOT, "%s = %.3f%n", key, value);
  }

  /** The scenario's table. */
  String scenario() {
    return String.format(
            Locale.ROOT,
            """
            [exposures]
            seconds = %d
            fwhm_arcsec = %.2f
            scale = %.1f
            width_px = %d
            height_px = %d
            guide_star_east_arcmin = %.3f
            guide_star_north_arcmin = %.3f
            """,
            seconds,
            FWHM_ARCSEC,
            SCALE,
            WIDTH,
            HEIGHT,
            guideStarEastArcmin,
            guideStarNorthArcmin)
        + optics;
  }

  /** What the owner tells of it: north up, east to the left. */
  String equipment(String withoutCamera) {
    return withoutCamera.replace(
            "exposure_s = 300", "exposure_s = " + seconds + "\nposition_angle_deg = 0")
        + String.format(
            Locale.ROOT,
            """
            [guide]
            arrangement = "guide-scope"
            star_x_arcmin = %.3f
            star_y_arcmin = %.3f
            """,
            -guideStarEastArcmin,
            guideStarNorthArcmin);
  }

  /** The exposures, written as a list and read again. */
  static MainCamera of(SimulatedNight night)
      throws FormatException, IOException, UnusableInputException {
    StringBuilder list = new StringBuilder();
    ExposureTableWriter.write(night, Exposures.of(night), list);
    Path file = Files.createTempFile("exposures", ".ecsv");
    try {
      Files.writeString(file, list);
      return new MainCamera(ExposureReader.read(file).frames(), Map.of(), List.of());
    } finally {
      Files.delete(file);
    }
  }
}
