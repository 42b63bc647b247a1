package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a report shows of the exposures beside their figures.
 *
 * @param spans when they were taken, in the order of the result's exposures
 * @param clock how the clocks were brought together, in words
 * @param roundFwhmArcsec width of the star image that air and optics alone make [arcsec]
 * @param roundFrom where that width comes from, in words
 * @param scale which scale the images have and where it is from, in words
 * @param arcsecPerPixel the scale that all images share [arcsec per pixel as stored]
 * @param flexureEastArcsecPerHour how the cameras move apart; null when it cannot be told
 * @param flexureNorthArcsecPerHour likewise
 * @param elongationLimit major over minor axis up to which a star counts as round
 * @param problems files that could not be used
 */
public record ExposureEvidence(
    List<Span> spans,
    String clock,
    Estimate roundFwhmArcsec,
    String roundFrom,
    String scale,
    OptionalDouble arcsecPerPixel,
    Estimate flexureEastArcsecPerHour,
    Estimate flexureNorthArcsecPerHour,
    double elongationLimit,
    List<String> problems) {
  /** Copies. */
  public ExposureEvidence {
    spans = List.copyOf(spans);
    problems = List.copyOf(problems);
  }

  /**
   * Start and end.
   *
   * @param startSeconds since the night's first frame [s]
   * @param endSeconds since the night's first frame [s]
   * @param verdict round, borderline, trailed or not covered
   */
  public record Span(double startSeconds, double endSeconds, String verdict) {}
}
