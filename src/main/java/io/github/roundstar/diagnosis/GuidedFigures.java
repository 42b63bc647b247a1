package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.SkySense;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.StarScatter;
import io.github.roundstar.results.AxisScatter;
import io.github.roundstar.results.Guided;
import io.github.roundstar.signal.ErrorEllipse;
import java.util.OptionalDouble;

/** Scatter of the guided star as the result shows it. */
final class GuidedFigures {
  private static final String GUIDED = "/guided";

  private final OptionalDouble imagingArcsecPerPixel;
  private final SkySense sense;
  private final Reasons.Scope scope;

  GuidedFigures(OptionalDouble imagingArcsecPerPixel, SkySense sense, Reasons.Scope scope) {
    this.imagingArcsecPerPixel = imagingArcsecPerPixel;
    this.sense = sense;
    this.scope = scope;
  }

  /** The record; the drifts are those of the guided offsets. */
  Guided of(StarScatter scatter, Answer<Estimate> raDrift, Answer<Estimate> decDrift) {
    ErrorEllipse ellipse =
        ErrorEllipse.of(scatter.aboutMeanArcsec(Axis.RA), scatter.aboutMeanArcsec(Axis.DEC));
    if (ellipse.elongation().isEmpty()) {
      scope.note(
          GUIDED + "/scatterElongation", "the offsets have no extent across their long axis");
    }
    boolean directed = sense.known();
    OptionalDouble angle = directed ? ellipse.positionAngleDegrees() : OptionalDouble.empty();
    if (!directed) {
      scope.note(GUIDED + "/positionAngleDeg", Directions.because(sense));
    } else if (angle.isEmpty()) {
      scope.note(
          GUIDED + "/positionAngleDeg",
          "the scatter may as well be round: its elongation is within what chance makes");
    }
    double radial = scatter.rmsRadialArcsec();
    return new Guided(
        axis(scatter, Axis.RA, "/ra", raDrift),
        axis(scatter, Axis.DEC, "/dec", decDrift),
        radial,
        scatter.p95RadiusArcsec(),
        ellipse.elongation().map(Estimate::value).orElse(null),
        angle.isPresent() ? angle.getAsDouble() : null,
        imagingPixels(radial));
  }

  private Double imagingPixels(double radial) {
    if (imagingArcsecPerPixel.isEmpty()) {
      scope.note(
          GUIDED + "/rmsRadialImagingPixels",
          "the main camera's scale is not known: add focal_length_mm and pixel_um under [imaging]"
              + " in the equipment file");
      return null;
    }
    return radial / imagingArcsecPerPixel.getAsDouble();
  }

  private AxisScatter axis(StarScatter scatter, Axis axis, String key, Answer<Estimate> drift) {
    Answer<Double> mean = Directions.of(sense, axis, Answer.of(scatter.meanArcsec(axis)));
    return new AxisScatter(
        scatter.rmsArcsec(axis),
        scope.orNull(GUIDED + key + "/meanArcsec", mean),
        scatter.peakArcsec(axis),
        scatter.p95Arcsec(axis),
        scope.orNull(GUIDED + key + "/driftArcsecPerMinute", Directions.of(sense, axis, drift)));
  }
}
