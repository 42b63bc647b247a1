package io.github.roundstar.results;

import io.github.roundstar.model.SkySense;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the charts of a report show: decimated series, ready to draw. Not part of the JSON.
 *
 * @param mountName what the user calls the mount
 * @param imagingArcsecPerPixel scale of the main camera [arcsec per binned pixel]
 * @param timeline the runs in order of time
 * @param offsets the used offsets of all runs about each run's mean
 * @param raMotion right ascension with corrections taken out, on the sky, run by run
 * @param decMotion declination with corrections taken out, run by run
 * @param spectrum amplitude against period of the motion in right ascension, at the axis
 * @param worm one turn of the worm
 * @param axis drift in declination against hour angle
 * @param warnings what the reader should know about the input
 * @param sense which directions of the sky all runs of the night tell apart
 * @param exposures what is shown of the main camera's exposures, where any were named
 * @param localTime the time of day at the site, where it is known and may be told
 */
public record NightEvidence(
    Optional<String> mountName,
    OptionalDouble imagingArcsecPerPixel,
    List<RunTrace> timeline,
    OffsetCloud offsets,
    List<MotionTrace> raMotion,
    List<MotionTrace> decMotion,
    Optional<SpectrumTrace> spectrum,
    Optional<WormTrace> worm,
    Optional<AxisTrace> axis,
    List<String> warnings,
    SkySense sense,
    Optional<ExposureEvidence> exposures,
    Optional<LocalTime> localTime) {
  /** Copies the lists. */
  public NightEvidence {
    timeline = List.copyOf(timeline);
    raMotion = List.copyOf(raMotion);
    decMotion = List.copyOf(decMotion);
    warnings = List.copyOf(warnings);
  }

  /**
   * The night in a line: the greatest offset of either axis in each of so many equal stretches
   * [arcsec]; NaN where there was no frame.
   */
  public double[] outline(int stretches) {
    double[] greatest = new double[stretches];
    Arrays.fill(greatest, Double.NaN);
    double start = timeline.stream().mapToDouble(RunTrace::startSeconds).min().orElse(0);
    double end = timeline.stream().mapToDouble(RunTrace::endSeconds).max().orElse(0);
    for (RunTrace run : timeline) {
      for (Band band : List.of(run.ra(), run.dec())) {
        for (int i = 0; i < band.size(); i++) {
          double size = Math.max(-band.low(i), band.high(i));
          int at = (int) (stretches * (band.x(i) - start) / Math.max(end - start, 1e-9));
          int inside = Math.max(0, Math.min(stretches - 1, at));
          if (!Double.isNaN(size)) {
            greatest[inside] =
                Double.isNaN(greatest[inside]) ? size : Math.max(greatest[inside], size);
          }
        }
      }
    }
    return greatest;
  }

  /** Evidence of a night whose directions are known, without exposures. */
  public NightEvidence(
      Optional<String> mountName,
      OptionalDouble imagingArcsecPerPixel,
      List<RunTrace> timeline,
      OffsetCloud offsets,
      List<MotionTrace> raMotion,
      List<MotionTrace> decMotion,
      Optional<SpectrumTrace> spectrum,
      Optional<WormTrace> worm,
      Optional<AxisTrace> axis,
      List<String> warnings) {
    this(
        mountName,
        imagingArcsecPerPixel,
        timeline,
        offsets,
        raMotion,
        decMotion,
        spectrum,
        worm,
        axis,
        warnings,
        SkySense.KNOWN,
        Optional.empty(),
        Optional.empty());
  }

  /** The same with what the reader should know about the input. */
  public NightEvidence withWarnings(List<String> toKnow) {
    return with(timeline, toKnow, exposures, localTime);
  }

  /** The same with the runs drawn otherwise. */
  public NightEvidence withTimeline(List<RunTrace> runs) {
    return with(runs, warnings, exposures, localTime);
  }

  /** The same with exposures. */
  public NightEvidence withExposures(ExposureEvidence shown) {
    return with(timeline, warnings, Optional.of(shown), localTime);
  }

  /** The same with another time of day. */
  public NightEvidence withLocalTime(Optional<LocalTime> other) {
    return with(timeline, warnings, exposures, other);
  }

  private NightEvidence with(
      List<RunTrace> runs,
      List<String> toKnow,
      Optional<ExposureEvidence> shown,
      Optional<LocalTime> time) {
    return new NightEvidence(
        mountName,
        imagingArcsecPerPixel,
        runs,
        offsets,
        raMotion,
        decMotion,
        spectrum,
        worm,
        axis,
        toKnow,
        sense,
        shown,
        time);
  }
}
