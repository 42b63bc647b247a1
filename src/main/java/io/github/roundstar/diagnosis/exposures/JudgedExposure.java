package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.ExposureFrame.SkyShift;
import io.github.roundstar.results.Exposure;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One exposure with its verdict.
 *
 * @param window the exposure on the log
 * @param predicted what the log implies; nothing when it does not cover the exposure
 * @param corner elongation in the corner where the log and the field's turn imply most; nothing
 *     where the turn, the guide star's place or the sensor are not known
 * @param verdict round, borderline, trailed or not covered
 * @param cause what trailed it
 * @param equipment for the sensor's angle
 */
public record JudgedExposure(
    Window window,
    Optional<PredictedShape> predicted,
    Optional<Estimate> corner,
    String verdict,
    Cause cause,
    Equipment equipment) {
  /** When it started, by the log's clock. */
  public Instant start() {
    return window.start();
  }

  /** How long it took [s]. */
  public double seconds() {
    return window.frame().seconds();
  }

  /** The exposure as the result shows it. */
  public Exposure result() {
    Optional<MeasuredShape> measured = window.measured();
    OptionalDouble angle =
        predicted.map(PredictedShape::angleDegrees).orElse(OptionalDouble.empty());
    Optional<SkyShift> shift = measured.flatMap(MeasuredShape::shift);
    return new Exposure(
        window.frame().file(),
        start().plusNanos(500_000).truncatedTo(ChronoUnit.MILLIS).toString(),
        seconds(),
        window.coverage(),
        predicted.map(PredictedShape::elongation).orElse(null),
        orNull(angle),
        measured.map(MeasuredShape::elongation).orElse(null),
        measured.map(m -> orNull(m.fwhmArcsec())).orElse(null),
        measured.map(m -> orNull(m.angleDegrees())).orElse(null),
        shift.map(SkyShift::eastArcsec).orElse(null),
        shift.map(SkyShift::northArcsec).orElse(null),
        verdict,
        cause.code(),
        predicted.map(PredictedShape::majorFwhmArcsec).orElse(null),
        predicted.map(PredictedShape::minorFwhmArcsec).orElse(null),
        angle.isPresent()
            ? orNull(MeasuredShape.onSensor(window.frame(), equipment, angle.getAsDouble()))
            : null,
        measured.map(MeasuredShape::pattern).filter(p -> !p.equals("unknown")).orElse(null),
        cause.evidence().isEmpty() ? null : cause.evidence(),
        corner.orElse(null),
        measured.flatMap(MeasuredShape::corner).orElse(null));
  }

  private static Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }
}
