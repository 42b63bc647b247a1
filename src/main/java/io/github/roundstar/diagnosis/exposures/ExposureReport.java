package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What came of a night's exposures.
 *
 * @param exposures one by one, in order of time
 * @param clock how the clocks were brought together, in words
 * @param roundFwhmArcsec width of the star image that air and optics alone make [arcsec]
 * @param roundFrom where that width comes from, in words
 * @param scale which scale the images have and where it is from, in words
 * @param arcsecPerPixel the scale that all images share [arcsec per pixel as stored]
 * @param flexure how the cameras move apart
 * @param problems files that could not be used
 */
public record ExposureReport(
    List<JudgedExposure> exposures,
    String clock,
    Estimate roundFwhmArcsec,
    String roundFrom,
    String scale,
    OptionalDouble arcsecPerPixel,
    Optional<Flexure> flexure,
    List<String> problems) {
  /** Copies. */
  public ExposureReport {
    exposures = List.copyOf(exposures);
    problems = List.copyOf(problems);
  }
}
