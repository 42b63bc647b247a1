package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import java.util.List;

/**
 * Drift in declination against hour angle, and what the sensor's field does.
 *
 * @param runs the runs in order of time
 * @param axis drift that axis and air make, over the hours around the runs [h, arcsec/min]; empty
 *     when the axis is not known
 * @param sensor field of the main camera; null when it is not known
 */
public record AxisTrace(List<Run> runs, Polyline axis, Sensor sensor) {
  /** Copies. */
  public AxisTrace {
    runs = List.copyOf(runs);
  }

  /**
   * One run.
   *
   * @param run number
   * @param line drift from the begin to the end of the run [h, arcsec/min]
   * @param model drift that axis and air give this star [h, arcsec/min]
   * @param drift mean drift [arcsec/min]
   */
  public record Run(int run, Polyline line, Polyline model, Estimate drift) {}

  /**
   * The sensor, x to the right and y up from its middle.
   *
   * @param widthArcmin width [arcmin]
   * @param heightArcmin height [arcmin]
   * @param starXArcmin the guide star's place [arcmin]
   * @param starYArcmin the guide star's place [arcmin]
   * @param starKnown whether that place was given, not the worst one
   * @param turnDegrees turn of the image in one exposure [deg]
   * @param exposureSeconds the exposure [s]
   * @param arcsecPerPixel scale
   */
  public record Sensor(
      double widthArcmin,
      double heightArcmin,
      double starXArcmin,
      double starYArcmin,
      boolean starKnown,
      double turnDegrees,
      double exposureSeconds,
      double arcsecPerPixel) {}
}
